"""The sign before any tool: lettering, holes, ornament and edge, in one place."""

"""The version, below everything that tells it."""

__version__ = "0.1.0"

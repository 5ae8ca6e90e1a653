"""A text, a size and a hole pattern to verified RS-274 programs, a setup sheet and a picture of a sign."""

__version__ = "0.1.0"

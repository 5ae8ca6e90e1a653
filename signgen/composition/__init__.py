"""Where the words of a sign stand and how large they are, before any outline is drawn."""

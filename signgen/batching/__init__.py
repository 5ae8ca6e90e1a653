"""Rows -> jobs: a list of names, a sign for each; a bad row never stops the good ones."""

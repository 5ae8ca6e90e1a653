"""signgen from Python: what `import signgen` offers, one file for each thing that is done. The command line and this
call the same flow, so that they make the same bytes."""

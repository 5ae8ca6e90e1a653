"""`python -m signgen` is the same as `signgen`."""

from signgen.cli import main

main()

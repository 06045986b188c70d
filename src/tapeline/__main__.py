"""`python -m tapeline` is the command `tapeline`."""

from tapeline.cli import main

if __name__ == "__main__":
    main()

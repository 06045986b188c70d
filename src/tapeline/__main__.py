"""`python -m tapeline` is the command `tapeline`."""

import signal

# Ctrl-C while the rest is being loaded ends quietly; `main` takes over from there. Workers of a batch load this too.
if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
    signal.signal(signal.SIGINT, signal.SIG_DFL)

from tapeline.cli import main

if __name__ == "__main__":
    main()

"""Where the page listens: this machine alone, unless an address and a password are given."""

from __future__ import annotations

import ipaddress
import socket

from tapeline.problems import InputError, Problem, Severity

__all__ = ["address_of", "listen"]

NOTHING_DONE = "Nothing was opened."
Address = ipaddress.IPv4Address | ipaddress.IPv6Address


def address_of(host: str, *, password: bool) -> Address:
    """The address that `--host` names.

    >>> address_of("127.0.0.1", password=False)
    IPv4Address('127.0.0.1')

    Args:
        host: As typed.
        password: Whether there is a password; without one, only this machine is answered.

    Raises:
        InputError: `host-not-understood`, `host-wants-password`.
    """
    try:
        address: Address = ipaddress.ip_address(host)
    except ValueError:
        says = (
            f"--host {host}: that is not an address, such as 192.168.1.20 or fd00::20; a name is not taken, because it"
            " can be made to mean another machine"
        )
        raise _wrong("host-not-understood", says, "look up this machine's address in its network settings") from None
    if isinstance(address, ipaddress.IPv6Address):
        if address.scope_id is not None or address.is_link_local:
            says = f"--host {host}: an address of one cable (link-local) cannot be typed into a browser"
            raise _wrong("host-not-understood", says, "give another address of this machine")
        address = address.ipv4_mapped or address
    if address.is_unspecified or address.is_multicast or str(address) == "255.255.255.255":
        says = f"--host {host}: that is no address of one machine; only requests to the one that is given are answered"
        raise _wrong("host-not-understood", says, "give the one address at which the others reach this machine")
    if not password and not address.is_loopback:
        says = (
            f"--host {host} opens the page to other machines, and there is no password: whoever reaches that address"
            " could read this docket and change it"
        )
        hint = "add --password-file FILE, a file of yours alone with a password in it, or leave --host out"
        raise _wrong("host-wants-password", says, hint)
    return address


def listen(address: Address, port: int) -> socket.socket:
    """Take an address and port; raises `InputError` with `cannot-listen` where that cannot be."""
    family = socket.AF_INET6 if address.version == 6 else socket.AF_INET
    try:
        return socket.create_server((str(address), port), family=family)
    except OSError as error:
        # A socket's errors carry the address in brackets; the first half is what a person needs.
        reason = (error.strerror or str(error)).partition(" (while")[0].lower()
        says = f"the page cannot be opened at {address}, port {port}: {reason}"
        hint = "leave --port out for any that is free; an address has to be one of this machine"
        raise _wrong("cannot-listen", says, hint) from None


def _wrong(code: str, says: str, hint: str) -> InputError:
    return InputError(Problem(code, Severity.ERROR, says, hint=f"{hint}. {NOTHING_DONE}"))

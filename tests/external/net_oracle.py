"""Prints for each line of the standard input what Python's ipaddress says of it.
a ADDRESS            text, numeric value, loopback, multicast, link-local, reverse name
p PREFIX OTHER       text, last, mask, number of addresses, first and last host, overlaps, contains
c PREFIX PREFIX ...  the collapsed prefixes
t TEXT               whether TEXT (in hexadecimal UTF-8) is an address without a zone"""
import ipaddress, sys


def flag(value):
    return "1" if value else "0"


def address(text):
    a = ipaddress.ip_address(text)
    return [str(a), "%x" % int(a), flag(a.is_loopback), flag(a.is_multicast), flag(a.is_link_local), a.reverse_pointer]


def prefix(text, other):
    p, q = ipaddress.ip_network(text), ipaddress.ip_network(other)
    if p.num_addresses <= 2:
        hosts = p[0], p[-1]
    elif p.version == 4:
        hosts = p[1], p[-2]
    else:
        hosts = p[1], p[-1]
    return [str(p), str(p[-1]), str(p.netmask), str(p.num_addresses), str(hosts[0]), str(hosts[1]),
            flag(p.version == q.version and p.overlaps(q)), flag(p.version == q.version and q.subnet_of(p))]


def collapsed(*texts):
    nets = [ipaddress.ip_network(t) for t in texts]
    return [str(n) for v in (4, 6) for n in ipaddress.collapse_addresses(x for x in nets if x.version == v)]


def text(hexadecimal=""):
    try:
        typed = bytes.fromhex(hexadecimal).decode()
        ipaddress.ip_address(typed)
        return [flag("%" not in typed)]
    except ValueError:
        return ["0"]


for line in sys.stdin:
    kind, *rest = line.split()
    print(*{"a": address, "p": prefix, "c": collapsed, "t": text}[kind](*rest))

"""Judges planned prefixes and addresses with Python's ipaddress module.

Reads lines from standard input:
  block PREFIX            a new plan in this block
  net PREFIX HOSTS        a planned prefix and how many hosts it must hold
  host ADDRESS PREFIX     a planned address of a card and the prefix of its segment
Prints one line for each mistake; nothing when all is well.
"""
import ipaddress
import sys

block, nets, hosts = None, [], set()
for number, line in enumerate(sys.stdin, 1):
    word, *rest = line.split()
    if word == "block":
        block, nets, hosts = ipaddress.ip_network(rest[0]), [], set()
    elif word == "net":
        net = ipaddress.ip_network(rest[0])  # refuses host bits
        usable = net.num_addresses - 2
        if not net.subnet_of(block):
            print(f"{number}: {net} is not in {block}")
        if usable < int(rest[1]):
            print(f"{number}: {net} holds {usable} hosts, not {rest[1]}")
        if net.prefixlen < 30 and (net.num_addresses // 2) - 2 >= int(rest[1]):
            print(f"{number}: {net} is larger than {rest[1]} hosts need")
        for other in nets:
            if net.overlaps(other):
                print(f"{number}: {net} overlaps {other}")
        nets.append(net)
    elif word == "host":
        address, net = ipaddress.ip_address(rest[0]), ipaddress.ip_network(rest[1])
        if address not in net or address in (net.network_address, net.broadcast_address):
            print(f"{number}: {address} is no host of {net}")
        if address in hosts:
            print(f"{number}: {address} was given twice")
        hosts.add(address)
    else:
        print(f"{number}: unknown word {word}")

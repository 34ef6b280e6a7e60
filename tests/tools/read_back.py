#!/usr/bin/python3
"""Reads standard input with Python's own readers and prints the texts it found, a NUL after each.

read_back.py csv    every field, record after record (csv module, RFC 4180)
read_back.py html   the text of every <p>; any other element or any attribute but title is an error (html.parser)
read_back.py xml    the text and the title attribute of every <t> (xml.etree, expat)
read_back.py cmark-p, cmark-td
                       the text of every <p> or <td>; elements that plain text never makes are an error
read_back.py names  one file name a line: prints those that are twins of an earlier one by NFC and case folding
"""
import csv
import html.parser
import io
import sys
import unicodedata
import xml.etree.ElementTree


class Paragraphs(html.parser.HTMLParser):
    def __init__(self, tag="p", allowed=("p",)):
        super().__init__(convert_charrefs=True)
        self.tag = tag
        self.allowed = allowed
        self.texts = []
        self.depth = 0

    def handle_starttag(self, tag, attrs):
        if tag not in self.allowed or any(name != "title" for name, _ in attrs):
            sys.exit(f"markup got through: <{tag} {attrs}> after {self.texts[-1:]}")
        self.texts += [value for _, value in attrs]
        if tag == self.tag:
            self.texts.append("")
            self.depth += 1

    def handle_endtag(self, tag):
        self.depth -= tag == self.tag

    def handle_comment(self, data):
        sys.exit("a comment got through")

    def handle_data(self, data):
        if self.depth == 1:
            self.texts[-1] += data


def fields(text):
    return [field for record in csv.reader(io.StringIO(text, newline="")) for field in record]


def paragraphs(text, *of):
    parser = Paragraphs(*of)
    parser.feed(text)
    parser.close()
    return parser.texts


def elements(text):
    found = []
    for element in xml.etree.ElementTree.fromstring(text).iter("t"):
        found += [element.get("title"), element.text or ""]
    return found


def twins(text):
    seen, again = set(), []
    for name in text.split("\n")[:-1]:
        key = unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())
        again += [name] if key in seen else []
        seen.add(key)
    return again


READERS = {
    "csv": fields,
    "html": paragraphs,
    "xml": elements,
    "names": twins,
    "cmark-p": lambda text: paragraphs(text, "p", ("p", "code")),
    "cmark-td": lambda text: paragraphs(text, "td", ("table", "thead", "tbody", "tr", "th", "td", "code")),
}
source = sys.stdin.buffer.read().decode("utf-8")
for part in READERS[sys.argv[1]](source):
    sys.stdout.buffer.write(part.encode("utf-8") + b"\0")

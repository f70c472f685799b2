"""What a page says, read back from either form."""

from __future__ import annotations

import re
from html.parser import HTMLParser

from fpdf import FPDF

from analysis.report.write import render


class Reader(HTMLParser):
    """Collects text, elements and attributes."""

    def __init__(self):
        super().__init__()
        self.texts, self.tags, self.attributes = [], [], []
        self._quiet = 0

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.attributes += attrs
        self._quiet += tag in ("style", "script")

    def handle_endtag(self, tag):
        self._quiet -= tag in ("style", "script")

    def handle_data(self, data):
        if not self._quiet:
            self.texts.append(data)


def read_html(content):
    reader = Reader()
    reader.feed(render(content, "html").decode("utf-8"))
    return reader


def text_of(content):
    return " ".join(" ".join(read_html(content).texts).split())


def texts_of_pdf(content, monkeypatch):
    """Give every text that the PDF is drawn from, with the sizes of its type, and its sheets."""
    drawn, written, trials = [], [], []
    for name in ("cell", "multi_cell", "text"):
        old = getattr(FPDF, name)

        def noted(self, *args, _old=old, **kwargs):
            if kwargs.get("dry_run"):
                trials.append(1)
                found = _old(self, *args, **kwargs)
                trials.pop()
                return found
            if not trials:
                text = str(args[2]) if len(args) > 2 else str(kwargs.get("text", ""))
                drawn.append((self, text, self.font_size_pt))
            return _old(self, *args, **kwargs)

        monkeypatch.setattr(FPDF, name, noted)
    output = FPDF.output
    monkeypatch.setattr(FPDF, "output", lambda self, *args: (written.append(self), output(self, *args))[1])
    data = render(content, "pdf")
    monkeypatch.undo()
    texts = [(text, size) for pdf, text, size in drawn if pdf in written and text.strip()]
    return texts, len(re.findall(rb"/Type /Page\b(?!s)", data))


def words_of_pdf(content, monkeypatch):
    """Give all that the PDF says as one text."""
    texts, _ = texts_of_pdf(content, monkeypatch)
    return " ".join(" ".join(text for text, _ in texts).split())

"""Printing a page that was written: the PDF itself, sheet by sheet, on the printer that is chosen."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize
from PySide6.QtGui import QPainter
from PySide6.QtPdf import QPdfDocument
from PySide6.QtPrintSupport import QPrintDialog, QPrinter

if TYPE_CHECKING:
    from pathlib import Path

    from PySide6.QtWidgets import QWidget

DPI = 300  # sharper than the eye at reading distance


def ask_and_print(path: Path, parent: QWidget) -> bool:
    """Ask for a printer and print a PDF on it; tells whether it was printed."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setResolution(DPI)
    printer.setDocName(path.stem)
    dialog = QPrintDialog(printer, parent)
    return bool(dialog.exec()) and print_pdf(path, printer)


def print_pdf(path: Path, printer: QPrinter) -> bool:
    """Print all sheets of a PDF, each as large as the paper takes; tells whether it could be read."""
    document = QPdfDocument()
    if document.load(str(path)) is not QPdfDocument.Error.None_:
        return False
    painter = QPainter()
    printer.setFullPage(True)
    if not painter.begin(printer):
        return False
    paper = painter.viewport()
    for sheet in range(document.pageCount()):
        if sheet:
            printer.newPage()
        size = document.pagePointSize(sheet)
        scale = min(paper.width() / size.width(), paper.height() / size.height())
        drawn = QSize(round(size.width() * scale), round(size.height() * scale))
        painter.drawImage(0, 0, document.render(sheet, drawn))
    painter.end()
    document.close()
    return True

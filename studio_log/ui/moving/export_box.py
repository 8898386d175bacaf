"""Everything out of the studio: where to, as a folder or an archive, how far it is."""

from pathlib import Path
from typing import Final

from PySide6.QtCore import QDir
from PySide6.QtWidgets import (
    QCheckBox,
    QDialog,
    QDialogButtonBox,
    QFileDialog,
    QHBoxLayout,
    QLineEdit,
    QProgressBar,
    QPushButton,
    QVBoxLayout,
    QWidget,
)
from typing_extensions import override

from studio_log.language.words import tr, tr_later
from studio_log.services.moving import ExportFor, LongWork
from studio_log.ui.bridge import Bridge
from studio_log.ui.widgets.long_work import LongRun
from studio_log.ui.widgets.parts import Words

ABOUT: Final = tr_later(
    "Everything that the log knows is written into a new folder: tables that other programs read, "
    "one file that Studio Log reads back into an empty studio, and the photos by name. "
    "The studio itself is not changed."
)


class ExportBox(QDialog):
    """Asks where to and writes; can be stopped, and then nothing is left behind."""

    def __init__(self, bridge: Bridge, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._bridge = bridge
        self.setWindowTitle(tr("Export everything"))
        self.setModal(True)
        self.run = LongRun(self)
        self.place = QLineEdit(self)
        self.place.setAccessibleName(tr("The folder to make"))
        self.place.setText(self._proposed())
        self.choose_button = QPushButton(tr("C&hoose…"), self)
        self.zip_box = QCheckBox(tr("As one &archive (ZIP)"), self)
        self.bar = QProgressBar(self)
        self.bar.setAccessibleName(tr("How far the export is"))
        self.bar.hide()
        self.said = Words()
        self._lay_out()
        self._connect()
        self.resize(560, 240)

    def _proposed(self) -> str:
        day = f"{self._bridge.now():%Y-%m-%d}"
        return str(Path(QDir.homePath()) / f"studio-log-{day}")

    def _lay_out(self) -> None:
        buttons = QDialogButtonBox(self)
        role = QDialogButtonBox.ButtonRole
        self.go_button = QPushButton(tr("&Export"), self)
        self.go_button.setDefault(True)
        self.close_button = QPushButton(tr("&Close"), self)
        buttons.addButton(self.go_button, role.ActionRole)
        buttons.addButton(self.close_button, role.RejectRole)
        line = QHBoxLayout()
        line.addWidget(self.place, 1)
        line.addWidget(self.choose_button)
        whole = QVBoxLayout(self)
        whole.addWidget(Words(tr(ABOUT), tone="soft"))
        whole.addLayout(line)
        whole.addWidget(self.zip_box)
        whole.addWidget(self.bar)
        whole.addWidget(self.said)
        whole.addStretch(1)
        whole.addWidget(buttons)

    def _connect(self) -> None:
        self.choose_button.clicked.connect(self._choose)
        self.go_button.clicked.connect(self._pressed)
        self.close_button.clicked.connect(self.reject)
        self.zip_box.toggled.connect(self._named)
        self.run.progressed.connect(self._progressed)
        self.run.done.connect(self._ended)
        self.run.failed.connect(self._ended)

    def _named(self) -> None:
        """Let the name end as what it will be."""
        path = self.place.text().strip().removesuffix(".zip")
        self.place.setText(f"{path}.zip" if self.zip_box.isChecked() else path)

    def _choose(self) -> None:
        path = Path(self.place.text().strip())
        chosen = QFileDialog.getExistingDirectory(
            self, tr("Where the new folder is to stand"), str(path.parent)
        )
        if chosen:
            self.place.setText(str(Path(chosen) / path.name))

    def _pressed(self) -> None:
        if self.run.running:
            self.run.stop()
            return
        place = self.place.text().strip()
        if not place:
            self.said.setText(tr("Say where the folder is to be made. Nothing was written."))
            return
        question = ExportFor(Path(place).expanduser(), zipped=self.zip_box.isChecked())
        self.go_button.setEnabled(False)
        self._bridge.ask(question, self._start, failed=self._ended)

    def _start(self, work: LongWork) -> None:
        self.said.setText("")
        self.bar.setRange(0, 0)
        self.bar.show()
        self.go_button.setEnabled(True)
        self.go_button.setText(tr("&Stop"))
        self.run.start(work.run)

    def _progressed(self, done: int, every: int) -> None:
        self.bar.setRange(0, max(1, every))
        self.bar.setValue(done)

    def _ended(self, words: str) -> None:
        self.bar.hide()
        self.go_button.setEnabled(True)
        self.go_button.setText(tr("&Export"))
        self.said.setText(words)

    @override
    def done(self, result: int) -> None:
        """Close; what runs is stopped first, and leaves nothing behind."""
        self.run.end()
        super().done(result)

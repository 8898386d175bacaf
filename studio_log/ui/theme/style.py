"""The style sheet of the whole program, filled from palette and metrics."""

from dataclasses import asdict
from string import Template
from typing import Final

from studio_log.ui.theme.icons import icon_folder
from studio_log.ui.theme.state import FONT_STEPS, Theme

_SHEET: Final = Template("""
QMainWindow, QDialog { background: $ground; }
QToolTip { background: $raised; color: $ink; border: 1px solid $outline; padding: ${s}px; }
QFrame[sheet="true"], QWidget[sheet="true"] { background: $panel; }

QLabel { background: transparent; }
QLabel[role="soft"] { color: $soft; }
QLabel[role="small"] { color: $soft; font-size: $small; }
QLabel[role="title"] { font-size: $title; font-weight: 700; }
QLabel[role="heading"] { font-size: $heading; font-weight: 700; }
QLabel[role="digits"] { font-size: $digits; font-weight: 700; }
QLabel[role="danger"] { color: $danger_ink; font-weight: 700; }
QLabel[role="ochre"] { color: $ochre_ink; font-weight: 700; }
QLabel[role="indigo"] { color: $accent_ink; font-weight: 700; }
QLabel[role="good"] { color: $good_ink; font-weight: 700; }

QFrame[card] { border: 0; border-left: ${s}px solid $outline; border-radius: ${radius}px; }
QFrame[card="plain"] { background: $raised; border-left-color: $line; }
QFrame[card="danger"] { background: $danger_ground; border-left-color: $danger; }
QFrame[card="ochre"] { background: $ochre_ground; border-left-color: $ochre; }
QFrame[card="indigo"] { background: $indigo_ground; border-left-color: $accent; }

QPushButton, QToolButton {
  background: $raised; color: $ink; border: 1px solid $outline; border-radius: ${radius}px;
  padding: ${s}px ${l}px; min-height: ${field}px;
}
QToolButton { padding: ${s}px ${m}px; }
QPushButton:hover, QToolButton:hover { background: $chosen; }
QPushButton:pressed, QToolButton:pressed { background: $indigo_ground; border-color: $accent; }
QPushButton:checked, QToolButton:checked {
  background: $accent; color: $on_accent; border-color: $accent;
}
QPushButton:disabled, QToolButton:disabled { color: $outline; border-color: $line; }
QPushButton[look="primary"] {
  background: $accent; color: $on_accent; border-color: $accent; font-weight: 700;
}
QPushButton[look="danger"] {
  background: $danger; color: $on_danger; border-color: $danger; font-weight: 700;
}
QPushButton[look="ochre"] {
  background: $ochre; color: $on_ochre; border-color: $ochre; font-weight: 700;
}
QPushButton[look="quiet"], QToolButton[look="quiet"] {
  background: transparent; border-color: transparent;
}
QPushButton[look="quiet"]:hover, QToolButton[look="quiet"]:hover { background: $chosen; }
QPushButton[look="primary"]:hover, QPushButton[look="danger"]:hover,
QPushButton[look="ochre"]:hover { border-color: $ink; }
QPushButton[look="primary"]:disabled, QPushButton[look="danger"]:disabled,
QPushButton[look="ochre"]:disabled {
  background: $night; color: $soft; border-color: $line;
}
QPushButton[big="true"] { min-height: ${answer}px; font-size: $title; padding: 0 ${xl}px; }
QPushButton:focus, QToolButton:focus, QPushButton[look]:focus, QToolButton[look]:focus {
  border: ${focus}px solid $focus_ring; padding: ${s_in}px ${l_in}px;
}
QToolButton:focus { padding: ${s_in}px ${m_in}px; }
QPushButton[big="true"]:focus { padding: 0 ${xl_in}px; border-width: 3px; }

QLineEdit, QPlainTextEdit, QTextEdit, QSpinBox, QDoubleSpinBox, QComboBox, QDateTimeEdit,
QTimeEdit, QDateEdit {
  background: $raised; color: $ink; border: 1px solid $outline; border-radius: ${radius}px;
  padding: ${s}px ${m}px; min-height: ${field}px;
  selection-background-color: $accent; selection-color: $on_accent;
}
QLineEdit, QPlainTextEdit, QTextEdit { placeholder-text-color: $soft; }
QAbstractSpinBox QLineEdit, QAbstractSpinBox QLineEdit:focus, QComboBox QLineEdit,
QComboBox QLineEdit:focus {
  border: 0; border-radius: 0; padding: 0; min-height: 0; background: transparent;
}
QLineEdit:focus, QPlainTextEdit:focus, QTextEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus,
QComboBox:focus, QDateTimeEdit:focus, QTimeEdit:focus, QDateEdit:focus {
  border: ${focus}px solid $focus_ring; padding: ${s_in}px ${m_in}px;
}
QLineEdit:disabled, QComboBox:disabled, QSpinBox:disabled, QTimeEdit:disabled {
  background: $night; color: $outline;
}
QLineEdit:read-only { background: $panel; }
QLineEdit[wrong="true"] { border: ${focus}px solid $danger; }
QComboBox::drop-down, QDateEdit::drop-down { border: 0; width: ${arrow_room}px; }
QComboBox::down-arrow, QDateEdit::down-arrow { image: url("$icons/chevron-down.svg"); width: ${arrow}px; height: ${arrow}px; }
QComboBox QAbstractItemView {
  background: $raised; border: 1px solid $outline;
  selection-background-color: $accent; selection-color: $on_accent;
}
QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {
  background: transparent; border: 0; width: ${arrow_room}px;
}
QAbstractSpinBox::up-arrow { image: url("$icons/chevron-up.svg"); width: ${arrow_low}px; height: ${arrow_low}px; }
QAbstractSpinBox::down-arrow { image: url("$icons/chevron-down.svg"); width: ${arrow_low}px; height: ${arrow_low}px; }

QCheckBox, QRadioButton {
  spacing: ${m}px; padding: ${s}px; border: ${focus}px solid transparent;
  border-radius: ${radius_small}px;
}
QCheckBox:focus, QRadioButton:focus, QSlider:focus { border: ${focus}px solid $focus_ring; }

QCheckBox::indicator, QRadioButton::indicator, QAbstractItemView::indicator {
  width: ${tick}px; height: ${tick}px; background: $raised; border: 1px solid $outline;
  border-radius: ${radius_small}px;
}
QRadioButton::indicator { border-radius: ${tick_round}px; }
QCheckBox::indicator:hover, QRadioButton::indicator:hover { border-color: $ink; }
QCheckBox::indicator:checked, QAbstractItemView::indicator:checked {
  background: $accent; border-color: $accent; image: url("$icons/check-$scheme.svg");
}
QRadioButton::indicator:checked { background: $on_accent; border: ${tick_ring}px solid $accent; }
QRadioButton::indicator:checked { width: ${tick_hole}px; height: ${tick_hole}px; }
QCheckBox::indicator:disabled, QRadioButton::indicator:disabled { border-color: $line; }

QGroupBox { border: 1px solid $line; border-radius: ${radius}px; margin-top: ${line_high}px; padding: ${m}px; }
QGroupBox::title { subcontrol-origin: margin; left: ${m}px; color: $soft; }

QAbstractItemView {
  background: $panel; alternate-background-color: $ground; border: ${focus}px solid transparent;
  outline: 0; selection-background-color: $chosen; selection-color: $ink;
}
QAbstractItemView:focus { border-color: $focus_ring; }
QListView::item, QTreeView::item, QTableView::item { padding: ${s}px ${m}px; border: 0; }
QListView::item, QTreeView::item { min-height: ${item}px; }
QListView::item:selected, QTreeView::item:selected, QTableView::item:selected { background: $chosen; color: $ink; }
QListView::item:focus, QTreeView::item:focus, QTableView::item:focus { border: ${focus}px solid $focus_ring; }
QHeaderView { background: $panel; border: 0; }
QHeaderView::section {
  background: $panel; color: $soft; border: 0; border-bottom: 1px solid $line;
  padding: ${s}px ${m}px; font-weight: 700;
}

QTabBar::tab { background: transparent; color: $soft; padding: ${m}px ${l}px; border-bottom: 3px solid transparent; }
QTabBar::tab:selected { color: $ink; border-bottom-color: $accent; }
QTabBar::tab:focus { border: ${focus}px solid $focus_ring; }
QTabWidget::pane { border: 0; border-top: 1px solid $line; }

QSplitter::handle { background: $line; }
QSplitter::handle:hover, QSplitter::handle:pressed { background: $accent; }
QSplitter::handle:horizontal { width: ${handle}px; }
QSplitter::handle:vertical { height: ${handle}px; }

QScrollArea { border: ${focus}px solid transparent; background: transparent; }
QScrollArea:focus { border-color: $focus_ring; }
QAbstractScrollArea::corner { background: transparent; border: 0; }
QScrollBar { background: transparent; border: 0; margin: 0; }
QScrollBar:vertical { width: ${bar}px; }
QScrollBar:horizontal { height: ${bar}px; }
QScrollBar::handle { background: $outline; border-radius: ${bar_round}px; margin: 3px; }
QScrollBar::handle:vertical { min-height: 32px; }
QScrollBar::handle:horizontal { min-width: 32px; }
QScrollBar::handle:hover { background: $soft; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }

QMenuBar { background: $ground; }
QMenuBar::item { padding: ${s}px ${m}px; background: transparent; }
QMenuBar::item:selected { background: $accent; color: $on_accent; }
QMenu { background: $raised; border: 1px solid $outline; padding: ${s}px; }
QMenu::item { padding: ${m}px ${menu_pad}px; border-radius: ${radius_small}px; }
QMenu::item:selected { background: $accent; color: $on_accent; }
QMenu::icon { padding-left: ${m}px; }
QMenu::item:disabled { color: $outline; }
QMenu::separator { height: 1px; background: $line; margin: ${s}px ${m}px; }

QStatusBar { background: $ground; color: $soft; }
QStatusBar::item { border: 0; }
QProgressBar {
  background: $night; border: 0; border-radius: ${radius_small}px; text-align: center; color: $ink;
}
QProgressBar::chunk { background: $ochre; border-radius: ${radius_small}px; }
""")  # noqa: E501 - a rule reads best on its own line


def style_sheet(theme: Theme) -> str:
    """Fill the sheet; a missing or misspelt name fails here, not on the screen."""
    metrics = theme.metrics
    ring = metrics.focus - 1
    tick = round(metrics.line)
    points = {
        name: f"{theme.font(name).pointSizeF():.1f}pt" for name in FONT_STEPS if name != "body"
    }
    return _SHEET.substitute(
        {key: value for key, value in asdict(theme.palette).items() if key != "focus"},
        focus_ring=theme.palette.focus,
        icons=icon_folder().as_posix(),
        s=metrics.s,
        m=metrics.m,
        l=metrics.l,
        xl=metrics.xl,
        # The ring is wider than the edge it takes the place of: nothing may move.
        s_in=metrics.s - ring,
        m_in=metrics.m - ring,
        l_in=metrics.l - ring,
        xl_in=metrics.xl - 2,
        radius=metrics.radius,
        radius_small=metrics.radius_small,
        focus=metrics.focus,
        field=metrics.field - metrics.s,
        answer=metrics.answer,
        arrow=round(metrics.line * 0.8),
        arrow_low=round(metrics.line * 0.6),
        arrow_room=round(metrics.line * 1.4),
        line_high=round(metrics.line * 1.2),
        tick=tick,
        tick_round=tick // 2 + 1,
        tick_ring=tick // 3,
        tick_hole=tick + 2 - 2 * (tick // 3),
        item=round(metrics.line),
        scheme="dark" if theme.is_dark else "light",
        handle=max(3, metrics.s - 1),
        bar=14,
        bar_round=4,
        menu_pad=metrics.xl + metrics.m,
        **points,
    )

"""Short sounds for someone who looks at the lever and not at the screen. Without an audio device there is silence.

The sounds are made here, from plain tones: in the limit's zone one soft high tone, a pull caught two rising ones, not
valid two low ones; a wheel that turns too slowly two short rising ones, too fast two falling ones. Nothing is
loaded and nothing is kept on disk.
"""

from __future__ import annotations

import logging
from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np

if TYPE_CHECKING:
    from PySide6.QtMultimedia import QAudioSink

_log = logging.getLogger(__name__)

RATE_HZ = 44_100
VOLUME = 0.3  # of full scale: audible in a workshop, harmless on headphones


class Sound(StrEnum):
    """What is told."""

    ZONE = "zone"
    CAUGHT = "caught"
    NOT_VALID = "not valid"
    FASTER = "turn faster"
    SLOWER = "turn more slowly"


# Frequency (Hz) and duration (s) of each tone.
TONES = {
    Sound.ZONE: ((1320.0, 0.09),),
    Sound.CAUGHT: ((660.0, 0.11), (990.0, 0.16)),
    Sound.FASTER: ((520.0, 0.06), (780.0, 0.06)),
    Sound.SLOWER: ((780.0, 0.06), (520.0, 0.06)),
    Sound.NOT_VALID: ((330.0, 0.16), (247.0, 0.26)),
}


def wave(sound: Sound) -> bytes:
    """Give a sound as 16-bit samples of one channel, each tone eased in and out so that it does not click."""
    parts = []
    for hertz, seconds in TONES[sound]:
        time_s = np.arange(int(RATE_HZ * seconds)) / RATE_HZ
        ease = np.minimum(1.0, np.minimum(time_s, seconds - time_s) / 0.012)
        parts.append(VOLUME * ease * np.sin(2 * np.pi * hertz * time_s))
    return bytes((np.concatenate(parts) * 32767).astype("<i2").tobytes())


class Sounds:
    """Plays sounds; the audio library is loaded with the first one, and a machine without audio stays silent."""

    def __init__(self, *, on: bool = True) -> None:
        self.on = on
        self.played: list[Sound] = []  # the last few, for a deaf test
        self._sink: QAudioSink | None = None
        self._silent = False
        self._playing: object = None

    def play(self, sound: Sound) -> None:
        """Play a sound, if sounds are on; never raises, never waits."""
        if not self.on:
            return
        self.played = [*self.played[-20:], sound]
        if self._silent:
            return
        try:
            self._play(sound)
        except Exception as error:  # noqa: BLE001 - a missing loudspeaker must never disturb a test
            self._silent = True
            _log.info("no sound: %s", error)

    def _play(self, sound: Sound) -> None:
        from PySide6.QtCore import QBuffer, QByteArray, QIODevice
        from PySide6.QtMultimedia import QAudioFormat, QAudioSink, QMediaDevices

        device = QMediaDevices.defaultAudioOutput()
        if device.isNull():
            self._silent = True
            return
        if self._sink is None:
            kind = QAudioFormat()
            kind.setSampleRate(RATE_HZ)
            kind.setChannelCount(1)
            kind.setSampleFormat(QAudioFormat.SampleFormat.Int16)
            self._sink = QAudioSink(device, kind)
        buffer = QBuffer()
        buffer.setData(QByteArray(wave(sound)))
        buffer.open(QIODevice.OpenModeFlag.ReadOnly)
        self._sink.stop()
        self._sink.start(buffer)
        self._playing = buffer  # the sink reads it; it must live as long

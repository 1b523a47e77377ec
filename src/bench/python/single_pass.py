#!/usr/bin/env python3
"""The single pass that the monitor's slots are held against, in NumPy.

    single_pass.py FILE.wav SECONDS [SLOTS]   prints pairs per second of the best 50 ms
    single_pass.py --invent FILE.wav          writes a minute of an invented short arc

The same work as single_pass.c: scale, sums, least and greatest, short circuits, per slot of 10 ms.
The file goes through whole, or in pieces of so many slots: pieces that fit the cache are faster.
"""

import sys
import time
import wave

import numpy as np

PAIRS_PER_SECOND = 5000
SLOT_PAIRS = PAIRS_PER_SECOND // 100
AMPS_PER_COUNT = 0.29296875
VOLTS_PER_COUNT = 0.0244140625
SPELL_SECONDS = 0.05
SHORT_VOLTS = 8.0
NOISE_VOLTS = 1.0
FLOWING_AMPS = 9.0
LEAST_SHORT_PAIRS = 3  # 0.5 ms


def read_pairs(name):
    with wave.open(name) as wav:
        pairs = np.frombuffer(wav.readframes(wav.getnframes()), dtype="<i2")
    slots = len(pairs) // (2 * SLOT_PAIRS)
    return pairs[: slots * 2 * SLOT_PAIRS].reshape(slots, SLOT_PAIRS, 2)


def shorts_per_slot(i, v, run):
    """Ends of short circuits by slot, and the run that is open at the end of the piece."""
    i = i.ravel()
    v = v.ravel()
    flowing = np.abs(i) >= FLOWING_AMPS
    along = np.where(i < 0, -v, v)
    low = flowing & (along < SHORT_VOLTS) & (along > -NOISE_VOLTS)
    edges = np.diff(low.astype(np.int8), prepend=np.int8(run > 0), append=np.int8(0))
    starts = np.flatnonzero(edges == 1)
    ends = np.flatnonzero(edges == -1)
    if run > 0:
        starts = np.concatenate(([-run], starts))
    lengths = ends - starts
    open_run = int(lengths[-1]) if low[-1] else 0
    inside = ends < len(low)
    burns_again = ends[inside & (lengths >= LEAST_SHORT_PAIRS)]
    burns_again = burns_again[flowing[burns_again]]
    return np.bincount(burns_again // SLOT_PAIRS, minlength=len(i) // SLOT_PAIRS), open_run


def reduce(pairs, run):
    i = pairs[:, :, 0] * AMPS_PER_COUNT
    v = pairs[:, :, 1] * VOLTS_PER_COUNT
    shorts, run = shorts_per_slot(i, v, run)
    sums = (
        i.sum(axis=1),
        v.sum(axis=1),
        np.einsum("ij,ij->i", i, i),
        np.einsum("ij,ij->i", v, v),
        np.einsum("ij,ij->i", v, i),
        np.abs(i).sum(axis=1),
        np.abs(v).sum(axis=1),
        i.min(axis=1),
        i.max(axis=1),
        v.min(axis=1),
        v.max(axis=1),
        shorts,
    )
    return sums, run


def one_round(pairs, slots_per_piece):
    run = 0
    shorts = 0
    energy = 0.0
    for first in range(0, len(pairs), slots_per_piece):
        sums, run = reduce(pairs[first : first + slots_per_piece], run)
        shorts += int(sums[-1].sum())
        energy += float(sums[4].sum()) / PAIRS_PER_SECOND
    return shorts, energy


def measure(name, seconds, slots_per_piece=None):
    pairs = read_pairs(name)
    slots_per_piece = slots_per_piece or len(pairs)
    best = 0.0
    start = time.perf_counter()
    while time.perf_counter() - start < seconds:
        rounds = 0
        spell = time.perf_counter()
        while time.perf_counter() - spell < SPELL_SECONDS:
            shorts, energy = one_round(pairs, slots_per_piece)
            rounds += 1
        rate = rounds * len(pairs) * SLOT_PAIRS / (time.perf_counter() - spell)
        best = max(best, rate)
    print(f"{best:.0f} pairs/s, {shorts} short circuits, {energy:.1f} J")


def invent(name):
    k = np.arange(60 * PAIRS_PER_SECOND)
    arc = k % (12 * PAIRS_PER_SECOND) < 10 * PAIRS_PER_SECOND
    shorted = k % 100 < 20
    noise = k * 7919 % 13 - 6
    current = np.where(arc, np.where(shorted, 700, 420), 0) + noise
    voltage = np.where(arc, np.where(shorted, 100, 850), 2900) + noise
    with wave.open(name, "wb") as wav:
        wav.setparams((2, 2, PAIRS_PER_SECOND, 0, "NONE", "not compressed"))
        wav.writeframes(np.stack((current, voltage), axis=1).astype("<i2").tobytes())


if len(sys.argv) not in (3, 4):
    sys.exit(__doc__)
if sys.argv[1] == "--invent":
    invent(sys.argv[2])
else:
    measure(sys.argv[1], float(sys.argv[2]), *map(int, sys.argv[3:]))

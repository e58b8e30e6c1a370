"""Writes frames.csv: random SAE J1979 answers, and what two open decoders make of them.

    python3 -m venv v && v/bin/pip install scapy==2.8.0 obd==0.7.3
    v/bin/python make.py > frames.csv

Scapy cuts the messages into ISO-TP frames and decodes them. Where python-OBD knows the PID
too, both have to agree, or the script stops. One PID is left to python-OBD alone: of $10
this Scapy reads the first byte only.
"""

import logging
import random

logging.getLogger("scapy").setLevel(logging.ERROR)
from scapy.all import load_contrib

load_contrib("automotive.obd.obd")
load_contrib("isotp")
import obd
from scapy.contrib.automotive.obd.obd import OBD
from scapy.contrib.isotp import ISOTP

LENGTHS = {
    0x01: 4, 0x03: 2, 0x04: 1, 0x05: 1, 0x06: 1, 0x07: 1, 0x08: 1, 0x09: 1, 0x0B: 1,
    0x0C: 2, 0x0D: 1, 0x0E: 1, 0x0F: 1, 0x10: 2, 0x11: 1, 0x1F: 2, 0x21: 2, 0x2F: 1,
    0x30: 1, 0x31: 2, 0x33: 1, 0x42: 2, 0x43: 2, 0x44: 2, 0x45: 1, 0x46: 1, 0x4D: 2,
    0x4E: 2, 0x5C: 1, 0x5E: 2, 0x67: 3,
}
LETTERS = {"Powertrain": "P", "Chassis": "C", "Body": "B", "Network": "U", 0: "P", 1: "C", 2: "B", 3: "U"}
chance = random.Random(1979)


class Heard:
    def __init__(self, data):
        self.data = bytearray(data)
        self.ecu = 0
        self.frames = []


def other(pid, data):
    """What python-OBD says, if it is one number."""
    if pid > 0x5E or pid in (0x01, 0x03):
        return None
    told = obd.commands[1][pid].decode([Heard(bytes([0x41, pid]) + data)])
    return float(told.magnitude)


def value(pid, data, layer):
    if pid == 0x01:
        flags = ["1" if layer.mil else "0", str(layer.dtc_count)]
        flags += [str(int(f)) for f in (layer.continuous_tests_supported, layer.continuous_tests_ready,
                                        layer.once_per_trip_tests_supported, layer.once_per_trip_tests_ready)]
        return "/".join(flags)
    if pid == 0x03:
        return f"{layer.fuel_system1}/{layer.fuel_system2}"
    if pid == 0x67:
        one = f"{layer.sensor1:g}" if layer.sensor1_supported else "-"
        two = f"{layer.sensor2:g}" if layer.sensor2_supported else "-"
        return f"{one}/{two}"
    scapy_says = float(layer.data)
    obd_says = other(pid, data)
    if pid == 0x10:
        return f"{obd_says:.3f}"
    if obd_says is not None:
        assert abs(scapy_says - obd_says) < 0.0006 + 1e-4 * abs(obd_says), (hex(pid), data, scapy_says, obd_says)
    return f"{scapy_says:.3f}"


def frames(payload, pad):
    cut = ISOTP(payload).fragment()
    out = []
    for frame in cut:
        data = bytes(frame.data)
        if pad is not None:
            data = data.ljust(8, bytes([pad]))
        out.append(data.hex().upper())
    return "|".join(out)


def row(what, payload, expected):
    print(f"{what};{frames(payload, chance.choice([None, 0, 0xAA, 0x55, 0xCC]))};{expected}")


def answer(pids):
    payload = bytes([0x41])
    parts = []
    for pid in pids:
        data = chance.randbytes(LENGTHS[pid])
        payload += bytes([pid]) + data
        parts.append((pid, data))
    return payload, parts


def code(dtc):
    return f"{LETTERS[dtc.location]}{dtc.code1:X}{dtc.code2:X}{dtc.code3:X}{dtc.code4:X}"


def main():
    print("what;frames;expected")
    pids = sorted(LENGTHS)
    for nth in range(6200):
        payload, parts = answer([pids[nth % len(pids)]])
        (pid, data), = parts
        layer = OBD(payload).data_records[0].lastlayer()
        row("one", payload, f"{pid:02X}={value(pid, data, layer)}")
    for _ in range(1800):
        payload, parts = answer(chance.sample(pids, chance.randint(2, 6)))
        told = []
        for pid, data in parts:
            layer = OBD(bytes([0x41, pid]) + data).data_records[0].lastlayer()
            told.append(f"{pid:02X}={value(pid, data, layer)}")
        row("many", payload, " ".join(told))
    for _ in range(1700):
        service = chance.choice([0x43, 0x47, 0x4A])
        count = chance.choice([0, 1, 1, 2, 3, 4, 8, 20])
        codes = b"".join(chance.randint(1, 0xFFFF).to_bytes(2, "big") for _ in range(count))
        payload = bytes([service, count]) + codes
        told = OBD(payload).dtcs if count else []
        row(f"codes {service:02X}", payload, " ".join(code(dtc) for dtc in told))
    for _ in range(300):
        payload = bytes([0x7F, chance.choice([1, 3, 7, 9]), chance.choice([0x10, 0x11, 0x12, 0x21, 0x22, 0x78])])
        said = OBD(payload)
        row("refused", payload, f"{said.request_service_id:02X} {said.response_code:02X}")


main()

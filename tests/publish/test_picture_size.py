"""In: pictures of every format, made by hand from the formats' own descriptions. Out: how large they say they are."""

import pytest

from sizewright.publish.picture_size import Size, picture_size

PNG = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR" + (640).to_bytes(4, "big") + (480).to_bytes(4, "big") + b"\x08\x02\0\0\0"
GIF = b"GIF89a" + (640).to_bytes(2, "little") + (480).to_bytes(2, "little") + b"\0\0\0"
# A JPEG whose frame (C2, progressive) comes third: behind APP0 of 16 bytes and a Huffman table (C4, no frame).
JPEG = b"\xff\xd8\xff\xe0\0\x10" + b"JFIF\0" + b"\0" * 9 + b"\xff\xc4\0\x04\x01\x02" + b"\xff\xc2\0\x11\x08"
JPEG += (480).to_bytes(2, "big") + (640).to_bytes(2, "big") + b"\x03"
WEBP = b"RIFF\0\0\0\0WEBP"
LOSSY = WEBP + b"VP8 \0\0\0\0" + b"\0\0\0\x9d\x01\x2a" + (640).to_bytes(2, "little") + (480).to_bytes(2, "little")
LOSSLESS = WEBP + b"VP8L\0\0\0\0\x2f" + (639 | 479 << 14).to_bytes(4, "little")
EXTENDED = WEBP + b"VP8X\0\0\0\0\0\0\0\0" + (639).to_bytes(3, "little") + (479).to_bytes(3, "little")


@pytest.mark.parametrize(
    "content",
    [
        PNG,
        GIF,
        JPEG,
        LOSSY,
        LOSSLESS,
        EXTENDED,
        b'<?xml version="1.0"?>\n<!-- <b> -->\n<svg xmlns="a" width="640" height="480px" viewBox="0 0 4 3">',
        b"<svg viewBox='-1 -2, 640.2 479.8' stroke-width='3'>",
        b'<svg width="100%" height="100%" viewBox="0 0 640 480">',
    ],
)
def test_a_picture_tells_its_size(content: bytes) -> None:
    assert picture_size(content) == Size(640, 480)


@pytest.mark.parametrize("content", [b"", b"x", b"<svg>", b"\x89PNG\r\n\x1a\n", JPEG[:30], LOSSY[:20], WEBP, GIF[:8]])
def test_a_file_that_tells_none_has_none(content: bytes) -> None:
    assert picture_size(content) is None

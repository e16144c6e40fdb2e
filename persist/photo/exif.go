package photo

import (
	"bytes"
	"encoding/binary"
	"time"
)

// The tags that are read of what a camera writes into a photo (Exif 2.32, CIPA DC-008).
const (
	tagOrientation = 0x0112
	tagExif        = 0x8769
	tagTaken       = 0x9003 // DateTimeOriginal
)

// about is what a camera says of a photo.
type about struct {
	taken time.Time // by the camera's clock, by its digits alone; zero for not said
	turn  int       // 1 to 8, as the standard counts; 1 is upright
}

// aboutJPEG finds that in the first segments of a JPEG file. What cannot be read is not
// said.
func aboutJPEG(file []byte) about {
	none := about{turn: 1}
	if len(file) < 4 || file[0] != 0xff || file[1] != 0xd8 {
		return none
	}
	for at := 2; at+4 <= len(file) && file[at] == 0xff; {
		kind, size := file[at+1], int(binary.BigEndian.Uint16(file[at+2:]))
		end := at + 2 + size
		if kind == 0xda || size < 2 || end > len(file) { // the picture begins
			break
		}
		if body, is := bytes.CutPrefix(file[at+4:end], []byte("Exif\x00\x00")); kind == 0xe1 && is {
			return aboutTIFF(body)
		}
		at = end
	}
	return none
}

// aboutTIFF reads the two directories that matter.
func aboutTIFF(b []byte) about {
	a := about{turn: 1}
	if len(b) < 8 {
		return a
	}
	var order binary.ByteOrder = binary.LittleEndian
	if b[0] == 'M' {
		order = binary.BigEndian
	}
	each := func(at uint32, do func(tag uint16, count, value uint32, raw []byte)) {
		if uint64(at)+2 > uint64(len(b)) {
			return
		}
		n := int(order.Uint16(b[at:]))
		for i := range n {
			from := uint64(at) + 2 + 12*uint64(i)
			if from+12 > uint64(len(b)) {
				return
			}
			e := b[from : from+12]
			do(order.Uint16(e), order.Uint32(e[4:]), order.Uint32(e[8:]), e[8:])
		}
	}
	exif := uint32(0)
	each(order.Uint32(b[4:]), func(tag uint16, _, value uint32, raw []byte) {
		switch tag {
		case tagOrientation:
			if t := int(order.Uint16(raw)); t >= 1 && t <= 8 {
				a.turn = t
			}
		case tagExif:
			exif = value
		}
	})
	if exif == 0 {
		return a
	}
	each(exif, func(tag uint16, count, value uint32, _ []byte) {
		const form = "2006:01:02 15:04:05"
		if tag != tagTaken || count < uint32(len(form)) || uint64(value)+uint64(len(form)) > uint64(len(b)) {
			return
		}
		if at, err := time.Parse(form, string(b[value:int(value)+len(form)])); err == nil {
			a.taken = at
		}
	})
	return a
}

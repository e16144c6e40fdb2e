package photo_test

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"chargehand/persist/photo"
)

// camera is a JPEG as a camera writes it: the left half dark, the right bright, with how it
// was held, when it was taken, and who by.
func camera(t testing.TB, w, h, turn int, taken string) []byte {
	t.Helper()
	p := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			p.Set(x, y, color.Gray{uint8(20 + 200*(2*x/w))})
		}
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, nil); err != nil {
		t.Fatal(err)
	}
	le := binary.LittleEndian
	tiff := []byte{'I', 'I', 42, 0, 8, 0, 0, 0}
	field := func(tag, kind uint16, n, v uint32) {
		tiff = le.AppendUint16(tiff, tag)
		tiff = le.AppendUint16(tiff, kind)
		tiff = le.AppendUint32(tiff, n)
		tiff = le.AppendUint32(tiff, v)
	}
	const first, second = 8 + 2 + 3*12 + 4, 8 + 2 + 3*12 + 4 + 2 + 12 + 4
	tiff = le.AppendUint16(tiff, 3)
	field(0x0112, 3, 1, uint32(turn))
	field(0x8769, 4, 1, first)
	field(0x013b, 2, 13, second+20)
	tiff = le.AppendUint32(tiff, 0)
	tiff = le.AppendUint16(tiff, 1)
	field(0x9003, 2, 20, second)
	tiff = le.AppendUint32(tiff, 0)
	tiff = append(tiff, (taken + "\x00")[:20]...)
	tiff = append(tiff, "SECRET PERSON"...)
	body := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{0xff, 0xd8, 0xff, 0xe1}, binary.BigEndian.AppendUint16(nil, uint16(len(body)+2))...)
	return append(append(out, body...), b.Bytes()[2:]...)
}

func wanted(photo.Photo) error { return nil }

// A photo comes out smaller, upright and with nothing else of its file.
func TestAPhotoIsMadeAnew(t *testing.T) {
	var plain bytes.Buffer
	if err := png.Encode(&plain, image.NewRGBA(image.Rect(0, 0, 4, 4))); err != nil {
		t.Fatal(err)
	}
	all, left, err := photo.Read(fstest.MapFS{
		"b.jpg": {Data: camera(t, 2400, 1000, 6, "2026:05:09 11:42:07")}, "a.jpg": {Data: camera(t, 60, 40, 1, "2026:05:09 12:00:00")},
		"screen.png": {Data: plain.Bytes()}, "notes.txt": {Data: []byte("nothing")}, "cut.jpg": {Data: camera(t, 60, 40, 1, "2026:05:09 12:00:00")[:300]},
		".hidden.jpg": {Data: nil}, "below/c.jpg": {Data: nil},
	}, wanted)
	if err != nil {
		t.Fatal(err)
	}
	if len(all) != 2 || all[0].Name != "b.jpg" || !all[0].Taken.Equal(time.Date(2026, 5, 9, 11, 42, 7, 0, time.UTC)) {
		t.Fatalf("%d photos, the first %s at %v", len(all), all[0].Name, all[0].Taken)
	}
	if bytes.Contains(all[0].JPEG, []byte("Exif")) || bytes.Contains(all[0].JPEG, []byte("SECRET")) {
		t.Error("what the camera said is in it still")
	}
	p, err := jpeg.Decode(bytes.NewReader(all[0].JPEG))
	if err != nil {
		t.Fatal(err)
	}
	if got := p.Bounds(); got.Dx() != 500 || got.Dy() != 1200 {
		t.Errorf("it is %v", got)
	}
	bright := func(x, y int) bool { r, _, _, _ := p.At(x, y).RGBA(); return r > 0x8000 }
	if bright(250, 100) || !bright(250, 1100) { // held so that its left side was up
		t.Error("it is not upright")
	}
	said := map[string]string{}
	for _, l := range left {
		said[l.Name] = l.Why
	}
	if len(said) != 3 || !strings.Contains(said["screen.png"], "when it was taken") || !strings.Contains(said["notes.txt"], "picture") || said["cut.jpg"] == "" {
		t.Errorf("left out %v", said)
	}
}

// No more than a page can bear are taken, and nothing of a file makes it break down.
func TestPhotosAreBounded(t *testing.T) {
	f := fstest.MapFS{}
	one := camera(t, 8, 8, 1, "2026:05:09 12:00:00")
	for i := range photo.MostPhotos + 2 {
		f[string(rune('a'+i/26))+string(rune('a'+i%26))+".jpg"] = &fstest.MapFile{Data: one}
	}
	all, left, err := photo.Read(f, wanted)
	if err != nil || len(all) != photo.MostPhotos || len(left) != 2 {
		t.Errorf("%d taken, %d left, %v", len(all), len(left), err)
	}
}

func FuzzPhoto(f *testing.F) {
	f.Add(camera(f, 16, 8, 8, "2026:05:09 12:00:00"))
	f.Fuzz(func(_ *testing.T, file []byte) {
		_, _, _ = photo.Read(fstest.MapFS{"a.jpg": {Data: file}}, wanted)
	})
}

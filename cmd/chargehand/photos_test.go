package main

import (
	"bytes"
	order "encoding/binary"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// shot is a JPEG with the time at which a camera says that it was taken.
func shot(t *testing.T, path, taken string) {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewRGBA(image.Rect(0, 0, 30, 20)), nil); err != nil {
		t.Fatal(err)
	}
	tiff := append([]byte{'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 0x87, 0x69, 0, 4, 0, 0, 0, 1, 0, 0, 0, 26, 0, 0, 0, 0},
		append([]byte{0, 1, 0x90, 0x03, 0, 2, 0, 0, 0, 20, 0, 0, 0, 44, 0, 0, 0, 0}, taken+"\x00"...)...)
	body := append([]byte("Exif\x00\x00"), tiff...)
	out := append([]byte{0xff, 0xd8, 0xff, 0xe1}, order.BigEndian.AppendUint16(nil, uint16(len(body)+2))...)
	if err := os.WriteFile(path, append(append(out, body...), b.Bytes()[2:]...), 0o600); err != nil {
		t.Fatal(err)
	}
}

// Photos stand in the report at their own time, put right by the photo of a clock; the page
// names no file, and what was not taken is told.
func TestPhotosOfAFolder(t *testing.T) {
	h := newHouse(t)
	id := h.imported(filepath.Join(root, "testdata", "logs", "03-norse-course-2016-11-30.csv"), "--date", "2016-11-30")
	dir := t.TempDir()
	shot(t, filepath.Join(dir, "clock-IMG1.jpg"), "2016:11:30 12:00:00")
	shot(t, filepath.Join(dir, "IMG2.jpg"), "2016:11:30 14:30:00")
	shot(t, filepath.Join(dir, "IMG3.jpg"), "2019:01:01 14:30:00")
	out := filepath.Join(t.TempDir(), "r.html")
	h.run("report", id, "--out", out, "--photos", dir, "--clock-photo", "clock-IMG1.jpg=13:05:30")
	page, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	text := string(page)
	if n := strings.Count(text, "data:image/jpeg;base64,"); n != 2 {
		t.Errorf("%d photos", n)
	}
	for _, says := range []string{"<figcaption>13:05", "<figcaption>15:35", "1 of the folder not taken"} {
		if !strings.Contains(text, says) {
			t.Errorf("the page does not say %q", says)
		}
	}
	if strings.Contains(text, "IMG") || strings.Contains(text, dir) {
		t.Error("the page names a file")
	}
}

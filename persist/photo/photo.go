package photo

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	_ "image/png" // photos of a screen, or drawn over
	"io"
	"io/fs"
	"slices"
	"strings"
	"time"

	"chargehand/model/words"
)

// Bounds of what is taken.
const (
	MostPhotos = 40
	mostFile   = 40 << 20 // bytes of a file
	mostPixels = 80e6
	longSide   = 1200 // pixels of a photo in the page
	quality    = 80
)

// Photo is one photo.
type Photo struct {
	Name  string    // of its file, to speak of; it stands in no page
	Taken time.Time // by the camera's clock, by its digits alone
	JPEG  []byte
}

// Left is a file that was not taken, and why.
type Left struct{ Name, Why string }

// Read reads the photos of a folder, not of those below it, in the order in which they were
// taken. The error is of the folder; what is wrong with a file leaves that file out.
func Read(folder fs.FS, wanted func(Photo) error) (all []Photo, left []Left, err error) {
	files, err := fs.ReadDir(folder, ".")
	if err != nil {
		return nil, nil, err
	}
	for _, f := range files {
		if f.IsDir() || strings.HasPrefix(f.Name(), ".") {
			continue
		}
		p, err := one(folder, f.Name(), wanted)
		if err == nil && len(all) == MostPhotos {
			err = errors.New(words.PhotoMany(MostPhotos))
		}
		if err != nil {
			left = append(left, Left{f.Name(), err.Error()})
			continue
		}
		all = append(all, p)
	}
	slices.SortStableFunc(all, func(a, b Photo) int { return a.Taken.Compare(b.Taken) })
	return all, left, nil
}

// one reads a photo. It is asked for by its time before its picture is unpacked.
func one(folder fs.FS, name string, wanted func(Photo) error) (Photo, error) {
	info, err := fs.Stat(folder, name)
	if err != nil || !info.Mode().IsRegular() {
		return Photo{}, errors.New(words.PhotoNoFile)
	}
	f, err := folder.Open(name)
	if err != nil {
		return Photo{}, errors.New(words.PhotoNoFile)
	}
	defer f.Close()
	file, err := io.ReadAll(io.LimitReader(f, mostFile+1))
	switch {
	case err != nil:
		return Photo{}, err
	case len(file) > mostFile:
		return Photo{}, errors.New(words.PhotoLarge)
	}
	shape, _, err := image.DecodeConfig(bytes.NewReader(file))
	switch {
	case err != nil:
		return Photo{}, errors.New(words.PhotoKind)
	case float64(shape.Width)*float64(shape.Height) > mostPixels || shape.Width < 1 || shape.Height < 1:
		return Photo{}, errors.New(words.PhotoLarge)
	}
	about := aboutJPEG(file)
	if about.taken.IsZero() {
		return Photo{}, errors.New(words.PhotoNoTime)
	}
	p := Photo{Name: name, Taken: about.taken}
	if err := wanted(p); err != nil {
		return Photo{}, err
	}
	picture, _, err := image.Decode(bytes.NewReader(file))
	if err != nil {
		return Photo{}, fmt.Errorf("%s: %w", words.PhotoKind, err)
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, upright(smaller(picture), about.turn), &jpeg.Options{Quality: quality}); err != nil {
		return Photo{}, err
	}
	p.JPEG = out.Bytes()
	return p, nil
}

// smaller is a picture whose longer side is [longSide] at most: each dot the mean of those
// that fall into it. The standard library scales none, and that is all that is needed here.
func smaller(p image.Image) *image.RGBA {
	b := p.Bounds()
	w, h := b.Dx(), b.Dy()
	tw, th := w, h
	if long := max(w, h); long > longSide {
		tw, th = max(1, w*longSide/long), max(1, h*longSide/long)
	}
	out := image.NewRGBA(image.Rect(0, 0, tw, th))
	for y := range th {
		y0, y1 := y*h/th, max((y+1)*h/th, y*h/th+1)
		for x := range tw {
			x0, x1 := x*w/tw, max((x+1)*w/tw, x*w/tw+1)
			var r, g, bl, n uint64
			for sy := y0; sy < y1; sy++ {
				for sx := x0; sx < x1; sx++ {
					cr, cg, cb, _ := p.At(b.Min.X+sx, b.Min.Y+sy).RGBA()
					r, g, bl, n = r+uint64(cr), g+uint64(cg), bl+uint64(cb), n+1
				}
			}
			out.SetRGBA(x, y, color.RGBA{uint8(r / n >> 8), uint8(g / n >> 8), uint8(bl / n >> 8), 255})
		}
	}
	return out
}

// upright turns a picture as the camera says that it was held.
func upright(p *image.RGBA, turn int) image.Image {
	if turn <= 1 {
		return p
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	ow, oh := w, h
	if turn >= 5 {
		ow, oh = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, ow, oh))
	for y := range h {
		for x := range w {
			to := [9][2]int{2: {w - 1 - x, y}, 3: {w - 1 - x, h - 1 - y}, 4: {x, h - 1 - y}, 5: {y, x}, 6: {h - 1 - y, x}, 7: {h - 1 - y, w - 1 - x}, 8: {y, w - 1 - x}}[turn]
			out.SetRGBA(to[0], to[1], p.RGBAAt(x, y))
		}
	}
	return out
}

// TakenAt is when a photo of a folder was taken, by the camera's clock.
func TakenAt(folder fs.FS, name string) (time.Time, bool) {
	var at time.Time
	_, err := one(folder, name, func(p Photo) error {
		at = p.Taken
		return errors.New("seen")
	})
	return at, err != nil && !at.IsZero()
}

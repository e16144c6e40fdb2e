package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"time"

	"chargehand/model/report"
	"chargehand/model/session"
	"chargehand/model/words"
	"chargehand/persist/photo"
)

// withPhotos puts the photos of a folder into what a report is asked for, by the camera's
// clock or by that of the photo of a clock. It names those that were left out.
func withPhotos(w world, s session.Session, folder, clock string, o *report.Options) error {
	if folder == "" {
		return nil
	}
	if s.Light().Undated {
		return errors.New(words.UndatedPhotos)
	}
	dir := os.DirFS(folder)
	off, err := cameraOff(dir, clock)
	if err != nil {
		return err
	}
	from, to := report.Around(s)
	all, left, err := photo.Read(dir, func(p photo.Photo) error {
		if at := p.Taken.Add(off); at.Before(from) || at.After(to) {
			return errors.New(words.PhotoIsOff)
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("%s", words.CannotRead(folder, err))
	}
	for _, l := range left {
		fmt.Fprintln(w.err, "chargehand:", words.OneLine(words.PhotoNotTaken(l.Name, l.Why)))
	}
	for _, p := range all {
		o.Photos = append(o.Photos, report.Taken{At: p.Taken.Add(off), JPEG: p.JPEG})
	}
	o.NotTaken = len(left)
	return nil
}

// cameraOff is what is to be added to the camera's clock: the time that a photo of a clock
// shows, less the time at which it was taken; without its day, to the nearer one.
func cameraOff(dir fs.FS, clock string) (time.Duration, error) {
	if clock == "" {
		return 0, nil
	}
	name, text, ok := cutLast(clock, "=")
	var at time.Time
	err := errors.New("")
	for _, form := range []string{time.TimeOnly, words.Clock, "2006-01-02T15:04:05", "2006-01-02T15:04"} {
		if err != nil {
			at, err = time.Parse(form, text)
		}
	}
	if !ok || err != nil {
		return 0, wrongUse{errors.New(words.BadClockPhoto(clock))}
	}
	taken, ok := photo.TakenAt(dir, name)
	if !ok {
		return 0, errors.New(words.NoClockPhoto(name))
	}
	if at.Year() > 0 { // the day too
		return at.Sub(taken), nil
	}
	shown := time.Date(taken.Year(), taken.Month(), taken.Day(), at.Hour(), at.Minute(), at.Second(), 0, time.UTC)
	off := shown.Sub(taken)
	return off - off.Round(24*time.Hour), nil
}

// cutLast cuts at the last separator.
func cutLast(s, sep string) (before, after string, found bool) {
	i := strings.LastIndex(s, sep)
	if i < 0 {
		return s, "", false
	}
	return s[:i], s[i+len(sep):], true
}

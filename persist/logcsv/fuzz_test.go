package logcsv

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"chargehand/model/entry"
)

// FuzzRead feeds any bytes: Read never panics, gives all or nothing with an
// error that names a line, and what it takes comes back after writing and fits
// the journal.
func FuzzRead(f *testing.F) {
	for _, b := range published(f) {
		f.Add(b)
	}
	f.Add([]byte("\ufeffclock;event;charcoal_kg;scoops;height_cm;date;note\r\n23:50;charge;1,9;2,5;40;day 2;\"a; b\"\r\n0:10:30;air;;;;;\r\n"))
	f.Add([]byte("clock,event,date\n09:00,note,\n08:00,tap,2026-05-09\n"))
	f.Add([]byte("# x\n#\nnote,event,clock\n\"#\",note,00:00\n,note,12:01\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		es, err := Read(bytes.NewReader(data), options)
		if err != nil {
			var e *Error
			if !errors.As(err, &e) || e.Line < 1 || e.What == "" || e.Do == "" {
				t.Fatalf("not named: %v", err)
			}
			if es != nil {
				t.Fatal("half read")
			}
			if strings.Contains(err.Error(), "\n") {
				t.Fatalf("more than a line: %q", err)
			}
			return
		}
		comesBack(t, es, options)
		for _, e := range es {
			line, err := entry.Encode(e)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := entry.Decode(line); err != nil {
				t.Fatal(err)
			}
		}
	})
}

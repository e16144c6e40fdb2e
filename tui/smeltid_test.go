package tui

import (
	"regexp"
	"testing"
	"time"
)

func TestSmeltID(t *testing.T) {
	day := time.Date(2026, 5, 9, 23, 59, 0, 0, time.FixedZone("", 7200))
	var many []string
	for range 28 {
		many = append(many, SmeltID(day, "Kiln", many))
	}
	for _, c := range []struct {
		furnace string
		taken   []string
		want    string
	}{
		{"Reed Hollow", nil, "2026-05-09-reedhollow-a"},
		{"Reed Hollow", []string{"2026-05-09-reedhollow-a", "2026-05-09-reedhollow-c"}, "2026-05-09-reedhollow-b"},
		{"Größe 2 / Ørsted", nil, "2026-05-09-groesse2oersted-a"},
		{"鉄", nil, "2026-05-09-x-a"},
		{" - ", nil, "2026-05-09-furnace-a"},
		{"", nil, "2026-05-09-furnace-a"},
		{"Kiln", many, "2026-05-09-kiln-ac"},
	} {
		if got := SmeltID(day, c.furnace, c.taken); got != c.want {
			t.Errorf("%q: %s, want %s", c.furnace, got, c.want)
		}
	}
	// A stream's name: small letters, digits and dashes, at most 100 (persist).
	valid := regexp.MustCompile(`^[a-z0-9][a-z0-9-]{0,99}$`)
	for _, name := range []string{"a\x00b\n../..", string(make([]byte, 300)), "ÀÈÌÒÙ ЖЖ", "0"} {
		if id := SmeltID(day, name, nil); !valid.MatchString(id) {
			t.Errorf("%q gives %q", name, id)
		}
	}
}

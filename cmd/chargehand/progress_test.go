package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"chargehand/model/entry"
)

// Import, check and rescue say in plain lines how far they are, where standard
// error is no terminal; what is over at once says nothing.
func TestLongTasksSayHowFarTheyAre(t *testing.T) {
	h := newHouse(t)
	var rows strings.Builder
	rows.WriteString("clock,event,note\n")
	for i := range 6000 {
		fmt.Fprintf(&rows, "%02d:%02d,note,reading %d %s\n", i/60/8%24, i/8%60, i, strings.Repeat("words ", 40))
	}
	long, short := h.write("long.csv", rows.String()), h.write("short.csv", "clock,event\n12:00,tap\n")
	said := func(args ...string) string {
		var out, complaint bytes.Buffer
		if code := run(append([]string{"--book", h.book()}, args...), world{
			out: &out, err: &complaint, getenv: func(string) string { return "" },
			clock: func() entry.Stamp { return entry.Stamp{Wall: today} },
		}); code != exitWell {
			t.Fatalf("%v gave %d: %s", args, code, complaint.String())
		}
		return complaint.String()
	}
	if s := said("import", short); s != "" {
		t.Errorf("a short import says %q", s)
	}
	for doing, args := range map[string][]string{"importing": {"import", long}} {
		if s := said(args...); !strings.HasPrefix(s, doing+": 20 %\n") || !strings.HasSuffix(s, doing+": 100 %\n") {
			t.Errorf("%v says %q", args, s)
		}
	}
	for doing, args := range map[string][]string{"checking": {"check"}, "rescuing": {"rescue"}} {
		if s := said(args...); !strings.HasSuffix(s, doing+": 100 %\n") {
			t.Errorf("%v says %q", args, s)
		}
	}
}

//go:build unix

package main

import (
	"flag"
	"os"
	"strings"
	"testing"
	"time"

	"chargehand/cmd/chargehand/internal/tty"
)

var renew = flag.Bool("readme", false, "put the picture as it is now into the readme")

// The picture in the readme is what the program shows after the keys that it
// names, in 80 columns of a terminal without colours.
//
//	go test ./cmd/chargehand -run ReadmePicture -readme
func TestReadmePicture(t *testing.T) {
	const fence = "```\n"
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	before, rest, _ := strings.Cut(string(text), fence)
	want, after, ok := strings.Cut(rest, fence)
	if !ok {
		t.Fatal("the readme has no picture")
	}
	s := openTerminal(t, t.TempDir(), 80, 24, "--plain")
	s.Shows("practise")
	s.Does("l", "replay it")
	s.Does("r", "as we saw it")
	var got string
	for waited := time.Duration(0); waited < tty.Patience; waited += 100 * time.Millisecond {
		// the solver's figures come when they come
		if got = plain(s.Screen()); got == want {
			break
		}
		time.Sleep(100 * time.Millisecond)
		if *renew && waited > 5*time.Second {
			break
		}
	}
	if got == want {
		return
	}
	if *renew {
		if err := os.WriteFile("../../README.md", []byte(before+fence+got+fence+after), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	t.Errorf("the program shows\n%s\nthe readme\n%s", got, want)
}

// plain is a screen without what stands blank at the ends of its lines.
func plain(screen string) string {
	var b strings.Builder
	for line := range strings.Lines(screen) {
		b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
	return b.String()
}

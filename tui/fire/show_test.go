package fire

import (
	"flag"
	"fmt"
	"strings"
	"testing"

	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
)

var show = flag.String("show", "", "print one far view: scene,WIDTHxHEIGHT and any of none, 16, 256, true, light, ascii")

// TestShow prints a far view to look at:
//
//	go test ./tui/fire -run TestShow -v -show far-late,120x36,true
func TestShow(t *testing.T) {
	if *show == "" {
		t.Skip("a way to look at a far view, asked for with -show")
	}
	var th theme.Theme
	w, h, s := 120, 36, scenes.Named("far-due")
	for i, word := range strings.Split(*show, ",") {
		switch {
		case i == 0:
			s = scenes.Named(word)
		case word == "light":
			th.Light = true
		case word == "ascii":
			th.ASCII = true
		default:
			if n, _ := fmt.Sscanf(word, "%dx%d", &w, &h); n == 2 {
				continue
			}
			th.Profile = map[string]theme.Profile{"16": theme.Base16, "256": theme.Fixed256, "true": theme.True}[word]
		}
	}
	fmt.Print(farFrame(th, w, h, s))
}

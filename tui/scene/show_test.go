package scene_test

import (
	"flag"
	"fmt"
	"strings"
	"testing"

	"chargehand/tui/scene/scenes"
	"chargehand/tui/theme"
)

var show = flag.String("show", "", "print one frame: scene,WIDTHxHEIGHT and any of none, 16, 256, true, light, ascii")

// TestShow prints a frame to look at:
//
//	go test ./tui/scene -run TestShow -v -show midsmelt,120x36,256,light
func TestShow(t *testing.T) {
	if *show == "" {
		t.Skip("a way to look at a frame, asked for with -show")
	}
	var th theme.Theme
	w, h, s := 120, 36, scenes.Named("midsmelt")
	for _, word := range strings.Split(*show, ",") {
		switch word {
		case "none":
			th.Profile = theme.None
		case "16":
			th.Profile = theme.Base16
		case "256":
			th.Profile = theme.Fixed256
		case "true":
			th.Profile = theme.True
		case "light":
			th.Light = true
		case "ascii":
			th.ASCII = true
		default:
			if n, _ := fmt.Sscanf(word, "%dx%d", &w, &h); n == 2 {
				continue
			}
			for _, one := range nearScenes() {
				if one.Name == word {
					s = one
				}
			}
		}
	}
	fmt.Print(frame(th, w, h, s))
}

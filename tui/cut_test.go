package tui_test

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/tui/desk"
)

// Nothing that is shown in the course of a day is cut off, near or far: what is said has
// room, or fewer words.
func TestNothingIsCutOnADay(t *testing.T) {
	for _, size := range [][2]int{desk.Small, desk.Usual} {
		d := desk.Sit(t)
		d.Send(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		d.Press("r", "pgdown", "enter", "y")
		seen := map[string]bool{}
		look := func(after string) {
			for _, row := range strings.Split(d.Picture(), "\n") {
				if strings.Contains(row, "…") && !seen[row] {
					seen[row] = true
					t.Errorf("%v, %s: %s", size, after, row)
				}
			}
		}
		for _, step := range append(scriptedDay[:len(scriptedDay):len(scriptedDay)], afterTheDay...) {
			for left := step.after; left > 0; left -= time.Minute {
				d.Wait(min(left, time.Minute))
				look("waiting")
			}
			for _, k := range step.keys {
				d.Press(k)
				look(strings.Join(step.keys, " "))
			}
			d.Press("space")
			look("far, " + strings.Join(step.keys, " "))
			d.Press("space")
		}
		d.Shows("2.5 kg weighed")
	}
}

// afterTheDay is what is put on the scales when it is over.
var afterTheDay = []keyedLater{{time.Minute, []string{"w", "g", "2", ".", "5", "enter"}}, {time.Minute, []string{"w", "r", "1", "enter"}}, {time.Minute, []string{"w", "k", "3", "enter"}}}

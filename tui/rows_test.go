package tui_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"

	"chargehand/model/entry"
	"chargehand/tui/desk"
	"chargehand/tui/screen"
)

// paperDay is a smelt whose paper was kept for three hours.
func paperDay(t *testing.T) *desk.Desk {
	d := desk.Practising(t)
	d.Pass(3 * time.Hour)
	d.Press("v", "b", "e", "p")
	return d
}

func paste(d *desk.Desk, text string) {
	d.Send(screen.Pressed{Key: tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true}, At: desk.Later(d.At, time.Second)})
}

// Twenty rows of paper are pasted, seen and kept at a go, each at its time and each an
// entry of its own that can be changed; while one of them is wrong none is kept.
func TestTwentyRowsOfPaper(t *testing.T) {
	d := paperDay(t)
	before := len(d.Acts())
	at := d.At.Wall.Add(-160 * time.Minute).Truncate(time.Minute)
	var rows []string
	for i := range 20 {
		rows = append(rows, fmt.Sprintf("%s\tc\t1\t%d", at.Add(time.Duration(7*i)*time.Minute).Format("15:04"), i%4+1))
	}
	rows[7] = strings.Replace(rows[7], "c", "t", 1) // a tap weighs one thing
	rows[7] = rows[7][:strings.LastIndex(rows[7], "\t")]
	rows[11] = strings.Replace(rows[11], "c", "q", 1)
	paste(d, strings.Join(rows, "\n")+"\n")
	d.Shows("no act has the letter")
	d.Press("enter")
	if got := len(d.Acts()); got != before {
		t.Fatalf("%d kept of rows of which one is wrong", got-before)
	}
	for range len(rows[11]) { // the row at fault is at the keys: typed anew
		d.Press("backspace")
	}
	d.Write(at.Add(77*time.Minute).Format("15:04") + " r")
	for range 9 {
		d.Press("down")
	}
	d.Wait(time.Second)
	d.Press("enter")
	d.Shows("keep 20 rows")
	d.Press("y")
	acts := d.Acts()[before:]
	if len(acts) != 20 {
		t.Fatalf("%d kept", len(acts))
	}
	kinds := map[entry.Kind]int{}
	for _, a := range acts {
		kinds[a.Kind()]++
	}
	if kinds[entry.KindCharge] != 18 || kinds[entry.KindTap] != 1 || kinds[entry.KindRod] != 1 {
		t.Errorf("%v", kinds)
	}
	d.Shows(at.Format("15:04"))
	d.Press("up", "a", "t")
	d.Shows("when it was")
}

// Rows that were left half typed come back, after a kill too.
func TestRowsOutliveTheProgram(t *testing.T) {
	d := paperDay(t)
	at := d.At.Wall.Add(-30 * time.Minute)
	d.Write(at.Format("15:04") + " b 700")
	d.Press("enter")
	d.Write("n half")
	d.Wait(time.Second)
	d = killed(d)
	d.Press("g", "v", "b", "e", "p")
	d.Shows("b 700")
	d.Shows("n half")
	d.Press("esc")
	d.Shows("drop 2 rows")
	d.Press("n")
	d.Shows("n half")
}

// Charcoal alone before the first ore is shown as the fill that it is kept as.
func TestAFillOnPaperIsShownAsOne(t *testing.T) {
	d := desk.Sit(t)
	d.Press("r", "pgdown", "enter", "y")
	d.Pass(3 * time.Hour)
	d.Press("v", "b", "e", "p")
	at := d.At.Wall.Add(-100 * time.Minute).Truncate(time.Minute)
	paste(d, at.Format("15:04")+" f 4\n"+at.Add(20*time.Minute).Format("15:04")+" c 1 1\n"+at.Add(30*time.Minute).Format("15:04")+" f 1\n")
	d.Shows("fill: 4 buckets of charcoal")
	d.Shows("charge: 1 bucket of charcoal, 1 scoop of ore")
	d.Shows("charge: 1 bucket of charcoal  ")
	before := len(d.Acts())
	d.Press("enter", "y")
	var kinds []string
	for _, ev := range d.Acts()[before:] {
		kinds = append(kinds, string(ev.Kind()))
	}
	if got := strings.Join(kinds, " "); got != "fill charge charge" {
		t.Errorf("kept as %s\n%s", got, d.Picture())
	}
}

package main

import (
	"fmt"
	"os"

	"github.com/charmbracelet/bubbles/progress"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"

	"chargehand/model/words"
)

// showFrom is how much there must be to do before progress is shown: less is over
// at once.
const showFrom = 2000

// showProgress tells on standard error how far a long task is, and gives what is
// to be told each step: on a terminal a bar that is drawn anew with each hundredth
// and taken away at the end, else a plain line with each fifth.
func showProgress(w world, c common, doing string) func(done, of int) {
	out, isFile := w.err.(*os.File)
	terminal := isFile && term.IsTerminal(out.Fd()) && !c.plain && w.getenv("TERM") != "dumb"
	bar := progress.New(progress.WithWidth(30), progress.WithFillCharacters('#', '.'), progress.WithColorProfile(termenv.Ascii))
	steps, shown := 5, 0
	if terminal {
		steps = 100
	}
	return func(done, of int) {
		step := 0
		if of >= showFrom {
			step = done * steps / of
		}
		if step <= shown {
			return
		}
		shown = step
		switch {
		case !terminal:
			fmt.Fprintln(w.err, words.InProgress(doing, done*100/of))
		case done == of:
			fmt.Fprint(w.err, "\r\x1b[K")
		default:
			fmt.Fprintf(w.err, "\r%s %s\x1b[K", doing, bar.ViewAs(float64(done)/float64(of)))
		}
	}
}

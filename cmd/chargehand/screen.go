package main

import (
	"crypto/rand"
	"encoding/hex"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/term"
	"github.com/mattn/go-runewidth"

	"chargehand/model/entry"
	"chargehand/model/invented"
	"chargehand/model/invented/week"
	"chargehand/model/shelf"
	"chargehand/model/words"
	"chargehand/persist"
	"chargehand/persist/twin"
	"chargehand/tui"
	"chargehand/tui/screen"
	"chargehand/tui/theme"
)

// framesPerSecond lies between two reaches: the renderer wakes as often as this
// for ever, which is most of what an idle screen costs, and the first frame
// waits for its first wake. At 30 idling took 0.8 % of a core, at 20 the first
// frame of a large shelf came after 63 ms.
const framesPerSecond = 22

func screenCommand() command {
	return command{does: words.ScreenDoes, setUp: func(*flag.FlagSet) func(world, common, []string) error {
		return func(w world, c common, operands []string) error {
			if err := none(operands); err != nil {
				return err
			}
			return openScreens(w, c)
		}
	}}
}

// readyTerminal gives the terminal to draw on, or why there is none.
func readyTerminal(w world) (*os.File, error) {
	out, ok := w.out.(*os.File)
	if !ok || !term.IsTerminal(w.in.Fd()) || !term.IsTerminal(out.Fd()) {
		return nil, errors.New(words.NoTerminal)
	}
	if w.getenv("TERM") == "dumb" {
		return nil, errors.New(words.DumbTerminal)
	}
	// One width table for all: under some locales the library would take half
	// of the picture's signs for two cells wide.
	runewidth.DefaultCondition.EastAsianWidth = false
	// The screen is one loop that mostly sleeps; on several processors each of its
	// wakings also wakes others that find nothing to do. A second one is the solver's,
	// so that no key waits for it.
	runtime.GOMAXPROCS(min(2, runtime.GOMAXPROCS(0)))
	return out, nil
}

// openScreens runs the screen on the book until it is left; where it is left for a
// rehearsal, that one, and then the book's again.
func openScreens(w world, c common) error {
	for {
		left, err := openScreen(w, c)
		if err != nil || left.rehearsal == nil {
			return err
		}
		if gone, err := rehearseOnScreen(w, c, *left.rehearsal); err != nil || gone {
			return err
		}
	}
}

// left is how a screen was left.
type left struct {
	rehearsal *screen.Rehearse // a rehearsal, nil for none
	gone      bool             // the terminal is gone, or the machine goes down
}

// openScreen runs the screen on the book until it is left, and then waits until
// the book has kept everything.
func openScreen(w world, c common) (left, error) {
	out, err := readyTerminal(w)
	if err != nil {
		return left{}, err
	}
	clock, keys := clockAndKeys(w.clock)
	w.clock = clock
	acks := make(chan persist.Ack, 1024)
	book, err := writer(w, c, func(a persist.Ack) { acks <- a })
	if err != nil {
		return left{}, err
	}
	store := shelfStore{book}
	cfg := configOf(w, c, out, store, store.Path(), clock())
	cfg.Demo, cfg.Week, cfg.Rehearsals, cfg.Logs = invented.Smelt, week.Entries, true, fileLogs{w, book}
	return runScreen(w, out, book, acks, tui.Program(tui.New(cfg), store, clock), keys)
}

// configOf is what every screen is handed.
func configOf(w world, c common, out *os.File, store tui.Store, path string, start entry.Stamp) tui.Config {
	return tui.Config{
		Store: store, Theme: themeOf(w, c), Start: start, NewUID: newUID, Version: programVersion(), Background: c.light || c.dark,
		Ring:    func() { _, _ = out.WriteString("\a") }, // a terminal that takes it no more has no bell either
		Crashed: func(value any, stack []byte) { writeCrash(path, value, stack) },
	}
}

// runScreen runs a screen until it is left, and closes its book.
func runScreen(w world, out *os.File, book *persist.Book, acks <-chan persist.Ack, model tea.Model, keys func(tea.Model, tea.Msg) tea.Msg) (l left, err error) {
	last, gone, err := onTerminal(w, out, acks, model, keys)
	closed := shut(w, book)
	lastResort(w, closed)
	if r, ok := tui.Wants(last); ok && err == nil {
		l.rehearsal = &r
	}
	l.gone = gone || err != nil
	return l, errors.Join(ending(err), closed)
}

// onTerminal runs a screen until it is left, or the terminal is gone.
func onTerminal(w world, out *os.File, acks <-chan persist.Ack, model tea.Model, keys func(tea.Model, tea.Msg) tea.Msg) (last tea.Model, gone bool, err error) {
	program := tea.NewProgram(model,
		tea.WithAltScreen(), tea.WithFPS(framesPerSecond), tea.WithFilter(tui.Unseen(keys)),
		tea.WithInput(keyboardOf(w.in)), tea.WithOutput(out), tea.WithoutSignalHandler())
	done := make(chan struct{})
	var away atomic.Bool
	go pass(acks, program, done)
	go leaveOnSignal(program, done, &away)
	last, err = program.Run()
	close(done)
	return last, away.Load(), err
}

// pass hands what the book says to the screen, in order, until the screen is
// gone; then it only empties the channel, so that the writer never waits.
func pass(acks <-chan persist.Ack, program *tea.Program, done <-chan struct{}) {
	for a := range acks {
		select {
		case <-done:
		default:
			program.Send(keptOf(a))
		}
	}
}

// keptOf is what the book says, as the screen takes it. Entries that come with
// an error are those that will never be kept.
func keptOf(a persist.Ack) tui.Kept {
	if a.Err != nil {
		return tui.Kept{Refused: a.Entries, Err: a.Err, Waiting: a.Waiting}
	}
	return tui.Kept{Entries: a.Entries, Waiting: a.Waiting, Told: a.Noted}
}

// leaveOnSignal leaves the screen when the terminal goes or the machine shuts
// down. The library knows nothing of a hang-up and would die of it unflushed.
func leaveOnSignal(program *tea.Program, done <-chan struct{}, gone *atomic.Bool) {
	signals := make(chan os.Signal, 1)
	signal.Notify(signals, syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT)
	select {
	case <-signals:
		gone.Store(true)
		program.Send(tui.Leave{})
	case <-done:
	}
}

// ending is the error of the screen's own, if any. That a terminal is gone is told by a read
// that fails as well as by the hang-up, whichever comes first.
func ending(err error) error {
	if err == nil || errors.Is(err, tea.ErrInterrupted) || errors.Is(err, syscall.EIO) {
		return nil
	}
	return fmt.Errorf("%s", words.ScreenFailed(err))
}

// themeOf picks the colours: by flag, then COLORFGBG, then dark; what is stored
// comes between the first two, once the screen has read it. The terminal is
// never asked.
func themeOf(w world, c common) theme.Theme {
	light, _ := theme.LightOf(w.getenv("COLORFGBG"))
	if c.light || c.dark {
		light = c.light
	}
	profile := theme.ProfileOf(os.Environ())
	if c.plain {
		profile = theme.None
	}
	return theme.Theme{Profile: profile, Light: light, ASCII: c.ascii || !speaksUTF8(w.getenv) || bareTerminal(w.getenv("TERM"))}
}

// shelfStore is the book as the screens see it.
type shelfStore struct{ *persist.Book }

func (s shelfStore) Entries(stream string) ([]entry.Entry, []entry.Gap, error) {
	return entriesOf(s, stream)
}

func (s shelfStore) Smelts() ([]shelf.Summary, error) { return smeltsOf(s) }

// source is what a book is read from: itself, or a reader beside the program that has it.
type source interface {
	Read(stream string) (persist.Reading, error)
	Summaries() ([]shelf.Summary, error)
}

// entriesOf gives the entries of one stream, and what is lost of it. A house in which
// nothing was kept yet is empty.
func entriesOf(s source, stream string) (kept []entry.Entry, lost []entry.Gap, err error) {
	r, err := s.Read(stream)
	var none *twin.NoStreamError
	if stream == entry.House && errors.As(err, &none) {
		return nil, nil, nil
	}
	if err == nil {
		kept, err = r.Entries(stream)
	}
	return kept, r.Gaps, err
}

// smeltsOf lists the smelts, newest first; those without a date last.
func smeltsOf(s source) ([]shelf.Summary, error) {
	list, err := s.Summaries()
	slices.SortStableFunc(list, func(a, b shelf.Summary) int { return b.Lit.Compare(a.Lit) })
	return list, err
}

// newUID is a random name for a smelt.
func newUID() string {
	var b [8]byte
	rand.Read(b[:]) // never fails (crypto/rand)
	return hex.EncodeToString(b[:])
}

// writeCrash keeps what a panic left, beside the book: on the screen it would
// be wiped away.
func writeCrash(book string, value any, stack []byte) {
	name := filepath.Join(filepath.Dir(book), "crash-"+time.Now().Format("20060102-150405")+".txt")
	_ = os.WriteFile(name, fmt.Appendf(nil, "%s\n%v\n\n%s", programVersion(), value, stack), 0o600)
}

// speaksUTF8 tells whether the terminal is told to take more than ASCII. Where
// nothing is set it does: all do nowadays.
func speaksUTF8(getenv func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToUpper(getenv(name)); v != "" {
			return strings.Contains(v, "UTF-8") || strings.Contains(v, "UTF8")
		}
	}
	return true
}

// bareTerminal tells by its name whether a terminal lacks the marks and blocks of the
// screen: a console with a font of its own, and those from before there were any.
func bareTerminal(term string) bool {
	name, _, _ := strings.Cut(term, "-")
	return slices.Contains([]string{"linux", "dumb", "ansi", "cons25", "sun", "vt52", "vt100", "vt102", "vt220", "vt320"}, name)
}

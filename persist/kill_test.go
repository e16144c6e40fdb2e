package persist

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"

	"chargehand/model/entry"
)

// hasty is how many entries the second process keys without a pause worth the
// name. After that it goes on at 50 a second, so that reading all of them stays
// quick however long a test takes.
const hasty = 1000

// writeUntilKilled is the second process: it keeps entries and says on standard
// output which are kept.
func writeUntilKilled(path string) {
	b, err := Open(path, Options{Summarise: counted, idle: 20 * time.Millisecond, Acked: func(a Ack) {
		for _, e := range a.Entries {
			fmt.Println(e.Seq, e.Event.(entry.Note).Text)
		}
	}})
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	fmt.Println("open")
	for n := 1; ; n++ {
		b.Keep(note(smelt, n))
		if n > hasty {
			time.Sleep(20 * time.Millisecond)
		}
		time.Sleep(time.Duration(rand.IntN(300)) * time.Microsecond)
	}
}

// writer starts the second process and waits until it has the book.
func startWriter(t *testing.T, path string) (*exec.Cmd, *bufio.Scanner) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "PERSIST_TEST_WRITER="+path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	if !lines.Scan() || lines.Text() != "open" {
		t.Fatalf("the second process says %q", lines.Text())
	}
	return cmd, lines
}

func TestNothingKeptIsLostWhenTheProgramIsKilled(t *testing.T) {
	path := placeOf(t)
	total := 0
	for run := range 12 {
		cmd, lines := startWriter(t, path)
		time.AfterFunc(time.Duration(20+rand.IntN(120))*time.Millisecond, func() { cmd.Process.Kill() })
		kept := map[uint64]string{}
		for lines.Scan() {
			// The last line may be cut by the kill; then it says nothing.
			if num, text, ok := strings.Cut(lines.Text(), " "); ok {
				if seq, err := strconv.ParseUint(num, 10, 64); err == nil {
					kept[seq] = text
				}
			}
		}
		cmd.Wait()
		b, _ := open(t, path, Options{})
		es, err := b.Entries(smelt)
		if err != nil && len(kept) > 0 {
			t.Fatal(err)
		}
		for seq, text := range kept {
			if seq > uint64(len(es)) || !strings.HasPrefix(es[seq-1].Event.(entry.Note).Text, text) {
				t.Fatalf("run %d: entry %d was called kept and is not there (%d are)", run, seq, len(es))
			}
		}
		total += len(kept)
		shut(t, b)
		if r, err := Check(path, Options{Summarise: counted}); err != nil || !r.OK() {
			t.Fatalf("run %d: %v, %v", run, r.Findings, err)
		}
	}
	if total == 0 {
		t.Error("the second process never kept anything")
	}
}

func TestReadersWorkWhileAnotherProcessWrites(t *testing.T) {
	path := placeOf(t)
	cmd, lines := startWriter(t, path)
	defer func() {
		cmd.Process.Kill()
		cmd.Wait()
		open(t, path, Options{}) // the killed writer may have left a line in the twin alone
	}()
	for lines.Scan() && !strings.HasPrefix(lines.Text(), "20 ") {
	}
	go func() {
		for lines.Scan() { // so that the second process is never stopped by a full pipe
		}
	}()
	if _, err := Open(path, Options{lockWait: 10 * time.Millisecond}); err == nil || !strings.Contains(err.Error(), "another window") {
		t.Errorf("a second writer gets %v", err)
	}
	r, err := OpenReader(path, Options{Summarise: counted})
	if err != nil {
		t.Fatal(err)
	}
	before, looks := 20, 50
	if testing.Short() {
		looks = 15
	}
	for range looks {
		es, err := r.Entries(smelt)
		if err != nil || len(es) < before || r.trouble != nil {
			t.Fatalf("%d entries after %d, %v, %v", len(es), before, err, r.trouble)
		}
		before = len(es)
		if sums, err := r.Summaries(); err != nil || len(sums) != 1 || sums[0].Entries < uint64(before) {
			t.Fatalf("%+v, %v", sums, err)
		}
	}
}

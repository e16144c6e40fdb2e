package twin

import (
	"bytes"
	"fmt"
	"slices"
	"testing"

	"chargehand/model/entry"
)

const name = "2026-05-09-reedhollow-a"

// kinds of lines: those with a sum, and those of books made before there was one.
var kinds = map[string]func([]byte) []byte{"with sums": Sealed, "of before": func(line []byte) []byte { return line }}

// chain makes lines that follow on those given; text tells whose they are.
func chain(t *testing.T, kind string, on [][]byte, n int, text string) [][]byte {
	t.Helper()
	lines := slices.Clone(on)
	for range n {
		seq := LastSeq(lines) + 1
		line, err := entry.Encode(entry.Entry{Version: 1, Stream: name, Seq: seq, Prev: HeadOf(lines), Event: entry.Note{Text: fmt.Sprintf("%s %d", text, seq)}})
		if err != nil {
			t.Fatal(err)
		}
		lines = append(lines, kinds[kind](line))
	}
	return lines
}

// flipped is a line with one bit of its text changed.
func flipped(line []byte) []byte {
	return bytes.Replace(line, []byte("own "), []byte("oun "), 1)
}

func without(lines [][]byte, i int) [][]byte { return slices.Delete(slices.Clone(lines), i, i+1) }

func with(lines [][]byte, i int, line []byte) [][]byte {
	lines = slices.Clone(lines)
	lines[i] = line
	return lines
}

func TestJoin(t *testing.T) {
	for kind := range kinds {
		t.Run(kind, func(t *testing.T) { join(t, kind) })
	}
}

func join(t *testing.T, kind string) {
	own := chain(t, kind, nil, 12, "own")
	theirs := chain(t, kind, own[:8], 3, "another hand")
	for _, c := range []struct {
		name       string
		book, twin [][]byte
		main       int
		gaps       []Gap
		others     int
		loose      int
	}{
		{name: "alike", book: own, twin: own, main: 12},
		{name: "behind", book: own[:5], twin: own, main: 12},
		{name: "changed in one", book: with(own, 4, flipped(own[4])), twin: own, main: 12},
		{name: "changed in both, elsewhere", book: with(own, 4, flipped(own[4])), twin: with(own, 9, flipped(own[9])), main: 12},
		{name: "changed, alone", book: with(own, 4, flipped(own[4])), main: 11, gaps: []Gap{{After: 4, Before: 6}}, loose: 1},
		{name: "missing, alone", book: without(own, 4), main: 11, gaps: []Gap{{After: 4, Before: 6}}},
		{name: "first missing", book: own[1:], main: 11, gaps: []Gap{{After: 0, Before: 2}}},
		{name: "last changed in one", book: own, twin: with(own, 11, flipped(own[11])), main: 12},
		{name: "last changed, alone", book: with(own, 11, flipped(own[11])), main: 11, gaps: []Gap{{After: 11, Before: 13}}, loose: 1},
		{name: "last missing, alone", book: own[:11], main: 11, gaps: []Gap{{After: 11, Before: 13}}},
		{name: "not yet counted", book: own, twin: chain(t, kind, own, 1, "own"), main: 13},
		{name: "parted", book: own, twin: theirs, main: 12, others: 1},
		{name: "parted at the last", book: own, twin: chain(t, "with sums", own[:11], 1, "another hand"), main: 12, others: 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := Pool{}
			p.Add(name, c.book...)
			p.Add(name, c.twin...)
			u := p.Join(map[string]uint64{HashOf(own[11]): 12})
			for i := range u.Gaps {
				u.Gaps[i] = Gap{After: u.Gaps[i].After, Before: u.Gaps[i].Before}
			}
			if len(u.Lines) != c.main || len(u.Others) != c.others || !slices.Equal(u.Gaps, c.gaps) || u.Loose != 0 && c.loose == 0 {
				t.Errorf("%d lines, gaps %v, %d others, %d loose", len(u.Lines), u.Gaps, len(u.Others), u.Loose)
			}
			for _, line := range u.Lines {
				seq := LastSeq([][]byte{line})
				if seq <= 12 && !bytes.Equal(line, own[seq-1]) {
					t.Errorf("entry %d is not as it was kept: %s", seq, line)
				}
			}
		})
	}
}

// Whatever single byte of any line is changed: no changed entry is taken.
func TestJoinTakesNoChangedEntry(t *testing.T) {
	for kind := range kinds {
		t.Run(kind, func(t *testing.T) { joinTakesNoChangedEntry(t, kind) })
	}
}

func joinTakesNoChangedEntry(t *testing.T, kind string) {
	own := chain(t, kind, nil, 6, "own")
	heads := map[string]uint64{HashOf(own[5]): 6}
	for i, line := range own {
		for at := range line {
			for bit := range 8 {
				bad := bytes.Clone(line)
				bad[at] ^= 1 << bit
				p := Pool{}
				p.Add(name, with(own, i, bad)...)
				u := p.Join(heads)
				if len(u.Lines) != 5 || len(u.Gaps) != 1 || u.Gaps[0].After != uint64(i) || len(u.Others) > 0 {
					t.Fatalf("entry %d, byte %d, bit %d: %d lines, gaps %v, %d others", i+1, at, bit, len(u.Lines), u.Gaps, len(u.Others))
				}
				for _, line := range u.Lines {
					seq := LastSeq([][]byte{line})
					if !bytes.Equal(line, own[seq-1]) {
						t.Fatalf("entry %d, byte %d, bit %d: entry %d is %s", i+1, at, bit, seq, line)
					}
				}
			}
		}
	}
}

// Two bytes are changed, in any two lines of the only copy: an entry that is not as
// it was kept is either left out or said to be doubtful.
func TestJoinDoubtsWhatNothingVouchesFor(t *testing.T) {
	for kind := range kinds {
		t.Run(kind, func(t *testing.T) { joinDoubtsWhatNothingVouchesFor(t, kind) })
	}
}

func joinDoubtsWhatNothingVouchesFor(t *testing.T, kind string) {
	own := chain(t, kind, nil, 5, "own")
	heads := map[string]uint64{HashOf(own[4]): 5}
	doubted := 0
	for i := range own {
		for k := i + 1; k < len(own); k++ {
			for a := range own[i] {
				for b := 0; b < len(own[k]); b += 7 {
					lines := slices.Clone(own)
					lines[i], lines[k] = bytes.Clone(own[i]), bytes.Clone(own[k])
					lines[i][a] ^= 1
					lines[k][b] ^= 1
					p := Pool{}
					p.Add(name, lines...)
					u := p.Join(heads)
					unsure := map[uint64]bool{}
					for _, g := range u.Gaps {
						unsure[g.After] = g.Unsure
					}
					for _, line := range u.Lines {
						seq := LastSeq([][]byte{line})
						if !bytes.Equal(line, own[seq-1]) {
							if doubted++; !unsure[seq] {
								t.Fatalf("lines %d and %d, bytes %d and %d: entry %d is %s, gaps %+v", i+1, k+1, a, b, seq, line, u.Gaps)
							}
						}
					}
				}
			}
		}
	}
	if doubted == 0 && kind == "of before" {
		t.Error("no changed entry was met")
	}
}

// The entry before a gap is known by its hash from then on: changed later, it is
// left out, and the one from the other copy is taken.
func TestTheEntryBeforeAGapStaysKnown(t *testing.T) {
	for kind := range kinds {
		t.Run(kind, func(t *testing.T) { theEntryBeforeAGapStaysKnown(t, kind) })
	}
}

func theEntryBeforeAGapStaysKnown(t *testing.T, kind string) {
	own := without(chain(t, kind, nil, 6, "own"), 3)
	bad := with(own, 2, flipped(own[2]))
	heads := map[string]uint64{HashOf(own[4]): 6, HashOf(own[2]): 3}
	p, q := Pool{}, Pool{}
	p.Add(name, bad...)
	if u := p.Join(heads); len(u.Lines) != 4 || len(u.Gaps) != 1 || u.Gaps[0].After != 2 {
		t.Errorf("%d lines, gaps %+v", len(u.Lines), u.Gaps)
	}
	q.Add(name, bad...)
	q.Add(name, own...)
	if u := q.Join(heads); len(u.Lines) != 5 || !bytes.Equal(u.Lines[2], own[2]) || u.Gaps[0].Unsure {
		t.Errorf("%d lines, gaps %+v", len(u.Lines), u.Gaps)
	}
}

// A last line that stands alone, without a count of it, is not taken when it was
// changed; only where the sum itself was struck out is it shown, and not vouched for.
func TestALastLineVouchesForItself(t *testing.T) {
	own := chain(t, "with sums", nil, 3, "own")
	for at := range own[2] {
		for bit := range 8 {
			bad := bytes.Clone(own[2])
			bad[at] ^= 1 << bit
			p := Pool{}
			p.Add(name, own[0], own[1], bad)
			u := p.Join(nil)
			if _, sealed := Intact(bad); sealed && len(u.Lines) != 2 || !sealed && !Alone(u.Lines, nil) && len(u.Lines) == 3 {
				t.Fatalf("byte %d, bit %d: %d lines, the last is %s", at, bit, len(u.Lines), bad)
			}
		}
	}
}

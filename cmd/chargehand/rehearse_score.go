package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"

	"chargehand/model/rehearse"
	"chargehand/model/solve"
	"chargehand/model/words"
)

// scoring rehearses many furnaces. Each case is a line of a file as soon as the furnace is done, so that it can be stopped
// and gone on with.
type scoring struct {
	furnaces int
	path     string
	noise    float64
	by       rehearse.Answerer
	nextHour bool
}

// scored is one part of a furnace's scores: a line of the file.
type scored struct {
	number int64
	heeds  bool
}

// mostScored bounds the furnaces of one scoring.
const mostScored = 10_000

func (s scoring) run(w world, c common) error {
	if s.furnaces < 1 || s.furnaces > mostScored {
		return wrongUse{errors.New(words.BadScore(s.furnaces))}
	}
	if !(s.noise > 0 && s.noise <= 4) {
		return wrongUse{errors.New(words.BadNoise(s.noise))}
	}
	done := map[scored][]rehearse.Case{}
	out := io.Discard
	if s.path != "" {
		f, err := os.OpenFile(s.path, os.O_RDWR|os.O_CREATE, 0o644)
		if err != nil {
			return errors.New(words.CannotWrite(s.path, err))
		}
		defer f.Close()
		end, err := s.read(f, done)
		if err != nil {
			return err
		}
		// A line that a stop left torn is written anew.
		if err := errors.Join(f.Truncate(end), seek(f, end)); err != nil {
			return errors.New(words.CannotWrite(s.path, err))
		}
		out = f
	}
	var all []rehearse.Case
	for n := int64(1); n <= int64(s.furnaces); n++ {
		parts := []scored{{n, false}}
		if s.nextHour {
			parts = append(parts, scored{n, true})
		}
		fresh := false
		for _, part := range parts {
			cases, ok := done[part]
			if !ok {
				var err error
				if cases, err = s.score(part); err != nil {
					return err
				}
				line, err := json.Marshal(cases)
				if err != nil {
					return err
				}
				if _, err := out.Write(append(line, '\n')); err != nil {
					return errors.New(words.CannotWrite(s.path, err))
				}
				fresh = true
			}
			all = append(all, cases...)
		}
		if fresh {
			fmt.Fprintln(w.err, words.ScoringSaid(n, s.furnaces))
		}
	}
	sum := rehearse.Total(all)
	if c.json {
		return json.NewEncoder(w.out).Encode(sum)
	}
	_, err := fmt.Fprint(w.out, words.Scored(sum))
	return err
}

func (s scoring) score(part scored) ([]rehearse.Case, error) {
	if !part.heeds {
		return rehearse.Score(part.number, s.noise, s.by, rehearse.Mishaps())
	}
	k, err := rehearse.ScoreHeeding(part.number, s.noise, s.by)
	return []rehearse.Case{k}, err
}

func seek(f *os.File, to int64) error {
	_, err := f.Seek(to, io.SeekStart)
	return err
}

// read takes the furnaces that a file has already, and gives where its whole lines end.
func (s scoring) read(f io.Reader, done map[scored][]rehearse.Case) (end int64, err error) {
	in := bufio.NewReader(f)
	for line := 1; ; line++ {
		text, err := in.ReadBytes('\n')
		if errors.Is(err, io.EOF) {
			return end, nil
		}
		if err != nil {
			return end, errors.New(words.CannotRead(s.path, err))
		}
		var cases []rehearse.Case
		if err := json.Unmarshal(text, &cases); err != nil || len(cases) == 0 {
			return end, errors.New(words.BadScoreLine(s.path, line))
		}
		if cases[0].Noise != s.noise || cases[0].Truth != s.by.Version() || cases[0].Solver != solve.Version {
			return end, errors.New(words.OtherScores(s.path, line))
		}
		done[scored{cases[0].Number, cases[0].Heeds}] = cases
		end += int64(len(text))
	}
}

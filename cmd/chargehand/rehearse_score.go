package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"

	"chargehand/model/rehearse"
	"chargehand/model/words"
)

// scoring rehearses many furnaces. Each case is a line of a file as soon as the furnace is done, so that it can be stopped
// and gone on with.
type scoring struct {
	furnaces int
	path     string
	noise    float64
	by       rehearse.Answerer
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
	done := map[int64][]rehearse.Case{}
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
		cases, ok := done[n]
		if !ok {
			var err error
			if cases, err = rehearse.Score(n, s.noise, s.by, rehearse.Mishaps()); err != nil {
				return err
			}
			line, err := json.Marshal(cases)
			if err != nil {
				return err
			}
			if _, err := out.Write(append(line, '\n')); err != nil {
				return errors.New(words.CannotWrite(s.path, err))
			}
			fmt.Fprintln(w.err, words.InProgress(words.Scoring, int(n)*100/s.furnaces))
		}
		all = append(all, cases...)
	}
	sum := rehearse.Total(all)
	if c.json {
		return json.NewEncoder(w.out).Encode(sum)
	}
	_, err := fmt.Fprint(w.out, words.Scored(sum))
	return err
}

func seek(f *os.File, to int64) error {
	_, err := f.Seek(to, io.SeekStart)
	return err
}

// read takes the furnaces that a file has already, and gives where its whole lines end.
func (s scoring) read(f io.Reader, done map[int64][]rehearse.Case) (end int64, err error) {
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
		if cases[0].Noise != s.noise || cases[0].Truth != s.by.Version() {
			return end, errors.New(words.OtherScores(s.path, line))
		}
		done[cases[0].Number] = cases
		end += int64(len(text))
	}
}

package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"path/filepath"
	"text/tabwriter"

	"chargehand/model/learn"
	"chargehand/model/words"
	"chargehand/persist/disk"
	"chargehand/persist/smeltcsv"
)

// hindcastBlooms scores the forecast of the bloom on a table of smelts.
func hindcastBlooms(w world, c common, operands []string, least float64) error {
	path, err := one(operands, words.BloomTable)
	if err != nil {
		return err
	}
	f, err := disk.Open(path)
	if err != nil {
		return errors.New(words.CannotRead(path, err))
	}
	defer f.Close()
	table, err := smeltcsv.Read(f, filepath.Base(path))
	if err != nil {
		return err
	}
	table.Smelts, table.Left.TooLittle = learn.From(least, table.Smelts)
	trials := learn.Trials(table.Smelts)
	score := learn.Score(trials)
	if c.json {
		return json.NewEncoder(w.out).Encode(score)
	}
	t := tabwriter.NewWriter(w.out, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(t, words.BloomsHead)
	for _, trial := range trials {
		fmt.Fprintln(t, words.BloomsRow(trial))
	}
	if err := t.Flush(); err != nil {
		return err
	}
	for _, line := range words.BloomsSum(score, table.Left) {
		if _, err := fmt.Fprintln(w.out, line); err != nil {
			return err
		}
	}
	return nil
}

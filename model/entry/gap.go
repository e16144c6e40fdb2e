package entry

// Gap is a place in a stream where entries are lost: those after After and before
// Before.
type Gap struct{ After, Before uint64 }

// Gaps finds where the sequences of a stream's entries leave some out. A whole
// stream has none, for sequences are given without one.
func Gaps(entries []Entry) (gaps []Gap) {
	seq := uint64(0)
	for _, e := range entries {
		if e.Seq > seq+1 {
			gaps = append(gaps, Gap{After: seq, Before: e.Seq})
		}
		seq = e.Seq
	}
	return gaps
}

package twin

import (
	"os"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// Mend makes a twin, whose text was read, hold exactly the lines. It gives the
// twin ready for appending, and tells say what was put right.
func Mend(folder, stream string, text Text, lines [][]byte, open func(path string) (File, error), say func(string)) (*Twin, error) {
	t := &Twin{Folder: folder, Stream: stream, open: open, segment: max(text.Segments, 1), size: text.Size, Seq: LastSeq(text.Lines)}
	if err := disk.MakeFolder(folder); err != nil {
		return nil, err
	}
	same := SamePrefix(lines, text.Lines)
	switch {
	case text.Unread != nil: // it is left alone, and all of it said again behind it
		t.segment, t.size, t.Seq = text.Segments+1, 0, 0
		say(words.TwinMoved(t.File(), words.TwinUnread(text.Unread)))
		if len(lines) == 0 {
			return t, nil
		}
		return t, t.Append(lines)
	case same < len(text.Lines) || text.Fault != "":
		say(words.MendedTwin(same + 1))
		if err := t.Remake(lines); err != nil {
			return nil, err
		}
		return t, nil
	case len(text.Torn) > 0:
		say(words.MendedTorn)
		if err := os.Truncate(t.File(), text.Size); err != nil {
			return nil, err
		}
	}
	if same < len(lines) {
		say(words.MendedFromBook(len(lines) - same))
		err := t.Append(lines[same:])
		if err != nil {
			return nil, err
		}
	}
	return t, nil
}

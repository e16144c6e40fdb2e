package twin

import (
	"os"

	"chargehand/model/words"
	"chargehand/persist/disk"
)

// Mend makes a twin, whose text was read, hold exactly the lines. It gives the
// twin ready for appending, and tells say what was put right.
func Mend(folder, stream string, text Text, lines [][]byte, open func(path string) (File, error), say func(string)) (*Twin, error) {
	t := &Twin{Folder: folder, Stream: stream, open: open, size: ByteCount(text.Lines), Seq: LastSeq(text.Lines)}
	if err := disk.MakeFolder(folder); err != nil {
		return nil, err
	}
	same := SamePrefix(lines, text.Lines)
	switch {
	case text.Unread != nil && len(lines) > 0:
		say(words.TwinMade(t.File() + words.TwinUnread(text.Unread)))
		return t, t.Remake(lines)
	case same < len(text.Lines) || text.Fault != "":
		say(words.MendedTwin(same + 1))
		return t, t.Remake(lines)
	case len(text.Torn) > 0:
		say(words.MendedTorn)
		if err := os.Truncate(t.File(), t.size); err != nil {
			return nil, err
		}
	}
	if same < len(lines) {
		say(words.MendedFromBook(len(lines) - same))
		return t, t.Append(lines[same:])
	}
	return t, nil
}

package entry

import (
	"encoding/hex"
	"strings"
)

// UID names a thing of the house for good: a lot, a furnace, a measure, a plan,
// a piece. It is eight random bytes in hex. A thing of the first version, which
// has none, goes by "name:" and its name.
type UID string

const byName = "name:"

// NameUID names a thing that has no uid.
func NameUID(name string) UID { return UID(byName + name) }

// Name is the name in a uid that is made of one.
func (u UID) Name() (string, bool) { return strings.CutPrefix(string(u), byName) }

func (u UID) or(name string) UID {
	if u == "" {
		return NameUID(name)
	}
	return u
}

func (u UID) trouble() string {
	if b, err := hex.DecodeString(string(u)); err == nil && (len(b) == 8 || u == "") && strings.ToLower(string(u)) == string(u) {
		return ""
	}
	if name, ok := u.Name(); ok && name != "" {
		return ""
	}
	return "is no uid: 16 hex digits, or name: and a name"
}

// Valid tells whether a text is a uid, not a bare name.
func (u UID) Valid() bool { return u != "" && u.trouble() == "" }

package house

import "chargehand/model/entry"

// LessonsFor are the last lessons that were kept of a furnace or of an ore mix, the newest
// first, at most so many. One that names neither is for every smelt.
func (s State) LessonsFor(furnace entry.UID, mix string, most int) []entry.Lesson {
	var all []entry.Lesson
	for i := len(s.Lessons) - 1; i >= 0 && len(all) < most; i-- {
		l := s.Lessons[i]
		if l.Furnace == "" && l.Mix == "" || l.Furnace != "" && l.Furnace == furnace || l.Mix != "" && l.Mix == mix {
			all = append(all, l)
		}
	}
	return all
}

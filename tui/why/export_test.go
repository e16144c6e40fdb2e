package why

import (
	"chargehand/model/rehearse"
	"chargehand/model/why"
)

// Invented is the screen with an opinion and a truth that nobody asked for, so that a picture of it does not hang on the solver.
func Invented(s Screen, o why.Opinion, truly []rehearse.Truly) Screen {
	s.told, s.truly = o, truly
	return s
}

// Asks tells whether furnaces are still asked.
func (s Screen) Asks() bool { return s.looking != nil && s.looking.More() }

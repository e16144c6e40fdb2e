// Package draw draws the things that screens are made of: the shaft, digits, bars,
// the strip of the day, the time line, a warning, the top and the foot. Values in,
// cells out: it knows no screen, and where a thing stands is for the screen to say.
package draw

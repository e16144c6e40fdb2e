// Package glow is the colour of heat: one table from degrees Celsius to what a
// terminal can show, for the shaft, its wall, the curve of temperatures and the
// day.
//
// Lightness carries the meaning: it only rises with heat, for every kind of
// colour sight, so that nothing rests on hue. Below about 450 °C charcoal and
// clay do not glow and are drawn as they look by daylight.
package glow

// Package scene is the picture of a smelt at one moment: the shaft, the time to
// the next charge, what that is, the figures, what is wrong, and the day. Fire shows
// it of now and Replay of the past.
package scene

// Package feed is the room for sensors: thermometers and air meters whose
// readings become entries, beside the keys and through the same writer.
package feed

// Package rehearse runs a smelt on the furnace that answers (packages truth and zones): it seals what was drawn, lets a scripted crew
// work through the day and key what it does and sees as people would, holds the adviser's session against what was true, and
// scores it over many furnaces.
//
// The crew knows the furnace as a crew does: as measured, by its buckets and scoops, by looks that are told wrong now and
// then. It answers the signs it sees and no warning of the program; what a mishap does to the furnace it lets be, so that it
// shows how long before harm a warning came.
package rehearse

package words

import "fmt"

// The photos of a report.
const (
	ReportPhotos = "Photos"

	FlagPhotos     = "photos of this `folder`, each at its own time; made smaller, nothing else of the file is kept"
	FlagClockPhoto = "`file=time`, the time as 14:32 or 2026-05-09T14:32:10: that photo shows a clock at this time, so the camera's is off by as much"

	PhotoNoFile = "not a file that can be read"
	PhotoKind   = "not a JPEG or PNG picture"
	PhotoLarge  = "too large: 40 MB and 80 million dots at most"
	PhotoNoTime = "it does not say when it was taken"
	PhotoIsOff  = "not of these days: see to the camera's clock with --clock-photo"
)

// PhotoMany says that no more are taken.
func PhotoMany(n int) string { return fmt.Sprintf("%d photos are in already", n) }

// PhotoAfter says what was keyed last before a photo.
func PhotoAfter(last string) string {
	if last == "" {
		return ""
	}
	return ", after " + last
}

// PhotoNotTaken names a file that was left out.
func PhotoNotTaken(name, why string) string { return name + ": not taken, " + why }

// ReportPhotosAre says how many photos there are, in the foot.
func ReportPhotosAre(n, not int) string {
	said := fmt.Sprintf("%d photos, made smaller: what else their files held is not here.", n)
	if not > 0 {
		said += fmt.Sprintf(" %d of the folder not taken.", not)
	}
	return said
}

// BadClockPhoto says how a photo of a clock is named.
func BadClockPhoto(s string) string {
	return fmt.Sprintf("%q is not FILE=HH:MM, as --clock-photo clock.jpg=08:15:30", s)
}

// NoClockPhoto says that the photo of the clock tells nothing.
func NoClockPhoto(name string) string {
	return name + ": no such photo in the folder, or it does not say when it was taken"
}

// UndatedPhotos says that a smelt of no known day has no photos.
const UndatedPhotos = "the day of the smelt is not known, so no photo can be placed: key it first, or leave --photos out"

package words

// Arch, wall and weather, and what a hand-over covers.
const (
	DoAround     = "arch, wall, weather"
	DoArchOpened = "arch opened"
	DoArchClosed = "arch closed"
	DoWall       = "wall"
	DoWeather    = "weather"

	WallCracks       = "a crack"
	WallBurnsThrough = "burnt through"
	WallSlumps       = "a slump"
	WallIsPatched    = "patched"
	WallPatchedWith  = "patched with what"
	WallWhere        = "where"

	WeatherRain  = "rain"
	WeatherWind  = "wind"
	WeatherAir   = "air, °C"
	WeatherAirIs = "air in the shade, away from the fire"

	InOtherWords = "in other words"

	HandOverCovers = "what does it cover"
)

// WallPlaces are where a wall gives; WallPatches what it is patched with; HandOvers what a
// hand-over may cover.
var (
	WallPlaces  = []string{"at the tuyere", "over the tuyere", "opposite the tuyere", "left of the tuyere", "right of the tuyere", "round the arch", "halfway up", "near the rim"}
	WallPatches = []string{"wet clay", "clay and sand", "clay and wire", "a brick or stone"}
	HandOvers   = []string{"everything", "charging", "blower and tuyere", "slag and tapping", "watching only"}
)

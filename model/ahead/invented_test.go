package ahead_test

import (
	"chargehand/model/ahead"
	"chargehand/model/invented"
)

func init() { ahead.Smelt = invented.Smelt }

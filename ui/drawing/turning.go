package drawing

import (
	"math"

	"cohoist/ui/figure"
)

// turning is from where the turnable view is seen.
type turning struct {
	set             bool
	azimuth, height float64 // degrees, as Turned takes them
	held            bool
	from            Point
	fromA, fromH    float64
	moved           bool
}

// How the view stands at first, how far a key and a screen unit turn it, in degrees.
const (
	firstAzimuth = 30.0
	firstHeight  = 24.0
	turnStep     = 15.0
	turnPerUnit  = 0.6
)

var turnButtons = []struct{ key, sign, label string }{
	{"ArrowLeft", "←", "turn left"},
	{"ArrowRight", "→", "turn right"},
	{"ArrowUp", "↑", "look from higher"},
	{"ArrowDown", "↓", "look from lower"},
	{"Home", "reset", "turn back to the first view"},
}

func (t *turning) begin() {
	if !t.set {
		t.set, t.azimuth, t.height = true, firstAzimuth, firstHeight
	}
}

// look sets the direction, the bearing within (−180, 180], the height from straight above to straight below.
func (t *turning) look(azimuth, height float64) {
	if !figure.Finite(azimuth) || !figure.Finite(height) {
		return
	}
	azimuth = math.Mod(azimuth, 360)
	if azimuth > 180 {
		azimuth -= 360
	} else if azimuth <= -180 {
		azimuth += 360
	}
	t.azimuth, t.height = azimuth, math.Max(-90, math.Min(90, height))
}

// press turns by a key, or says that the key means nothing here.
func (t *turning) press(key string, step float64) bool {
	t.begin()
	switch key {
	case "ArrowLeft":
		t.look(t.azimuth+step, t.height)
	case "ArrowRight":
		t.look(t.azimuth-step, t.height)
	case "ArrowUp":
		t.look(t.azimuth, t.height+step)
	case "ArrowDown":
		t.look(t.azimuth, t.height-step)
	case "Home":
		t.look(firstAzimuth, firstHeight)
	default:
		return false
	}
	return true
}

func (t *turning) grab(at Point) {
	t.begin()
	t.held, t.moved, t.from, t.fromA, t.fromH = true, false, at, t.azimuth, t.height
}

func (t *turning) to(at Point) {
	dx, dy := at.X-t.from.X, at.Y-t.from.Y
	t.moved = t.moved || math.Hypot(dx, dy) > 4
	if t.moved {
		t.look(t.fromA-dx*turnPerUnit, t.fromH+dy*turnPerUnit)
	}
}

func (t *turning) text() string {
	side := "from " + whole(int(math.Round(math.Abs(t.azimuth)))) + "° to the right of the elevation"
	if t.azimuth < 0 {
		side = "from " + whole(int(math.Round(-t.azimuth))) + "° to the left of the elevation"
	}
	if t.height < 0 {
		return side + ", " + whole(int(math.Round(-t.height))) + "° from below"
	}
	return side + ", " + whole(int(math.Round(t.height))) + "° from above"
}

// Package drawing is the drawing to scale beside the sentence: elevation, plan and a turnable view.
//
// It has no physics. A plan and its report become a scene (scene.go: where everything stands, level
// axes), the scene seen by a camera (camera.go) becomes a display list (list.go: shapes with class
// names and coordinates), and the component View (view.go) turns the lists into SVG. Everything but
// the component is a pure function and is tested without a browser.
//
// Axes. The scene is level: z up, x and y those of the payload frame before a rigid team leans into
// the wind. Lengths in metres. Screen coordinates are units of an SVG viewBox, x right, y down.
//
// Projection. The elevation looks along +y (x right, z up); the plan looks down (x right, y up) and
// stands below the elevation, x aligned: first-angle projection, ISO 5456-2.
package drawing

package check

// hoop is a closed rectangle of pipe on two posts that stands on nothing the document names.
const hoop = `
rodwright: 1
piece: hoop
unit: in
fineness: 1/16
place: {room: studio}
pipe: {standard: npt, size: 3/4}
posts:
  legs: {at: [[0, 0], [40, 0], [0, 20], [40, 20]], from: bottom rails, to: top rails}
rails:
  bottom: {joins: legs posts, level: 2 in}
  top: {joins: legs posts, level: 30 in}
`

// wallShelf is a board on two arms from a wall.
const wallShelf = `
rodwright: 1
piece: wall shelf
unit: mm
fineness: 1 mm
place: {room: studio, wall: studs 16 in}
wood: {species: white-oak}
pipe: {standard: npt, size: 3/4}
arms:
  bracket: {at: ends of shelf, inset: 200, count: 2, under: shelf, bands: short, reach: 300, end: cap}
panels:
  shelf: {length: 1000, width: 220, thickness: 21, grain: along length, level: 1400, sits: on bracket arms, straps: 1}
`

// twoBenches are two benches in one document that nothing joins.
const twoBenches = `
rodwright: 1
piece: two benches
unit: in
fineness: 1/16
place: {room: studio}
wood: {species: white-ash}
pipe: {standard: npt, size: 3/4}
posts:
  left: {at: corners of left seat, inset: 3 in, from: feet, to: left seat}
  right: {at: corners of right seat, inset: 3 in, from: feet, to: right seat}
rails:
  left: {joins: left posts, level: 5 in}
  right: {joins: right posts, level: 5 in}
panels:
  left seat: {length: 36 in, width: 14 in, thickness: 1 1/2 in, grain: along length, level: 17 in, at: [0, 0], sits: on left posts}
  right seat: {length: 36 in, width: 14 in, thickness: 1 1/2 in, grain: along length, level: 17 in, at: [60 in, 0], sits: on right posts}
feet: {levelling feet: {height: 1 1/2 in, rated: 300 lb}}
`

// rungsInLine stands on two posts: it needs a wall or a third foot.
const rungsInLine = `
rodwright: 1
piece: towel ladder
unit: in
fineness: 1/16
place: {room: bath}
pipe: {standard: npt, size: 1/2}
posts:
  legs: {at: [[0, 0], [20 in, 0]], from: feet, to: {level: 60 in, end: cap}}
rails:
  low: {joins: legs posts, level: 12 in}
  high: {joins: legs posts, level: 50 in}
feet: caps
`

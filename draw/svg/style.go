package svg

// Style is the style sheet of drawings, for a page that holds what Render gives. The custom properties
// --draw-ink, --draw-soft, --draw-saw, --draw-hatching, --draw-paper and --draw-steel set the colours; without
// them they are those of pencil on white paper. Weights and dashes are those of draw's pens; a test holds them
// together.
const Style = `svg.drawing path{fill:none;fill-rule:evenodd;stroke-linecap:round;stroke-linejoin:round}
svg.drawing .pen-outline{stroke:var(--draw-ink,#2a2a2c);stroke-width:0.5}
svg.drawing .pen-hidden{stroke:var(--draw-ink,#2a2a2c);stroke-width:0.25;stroke-linecap:butt;stroke-dasharray:2.4 1}
svg.drawing .pen-centre{stroke:var(--draw-soft,#5d5d60);stroke-width:0.18;stroke-linecap:butt;stroke-dasharray:5 0.9 0.5 0.9}
svg.drawing .pen-saw{stroke:var(--draw-saw,#a8321a);stroke-width:0.35;stroke-linecap:butt;stroke-dasharray:4 1.2}
svg.drawing .pen-measure{stroke:var(--draw-soft,#5d5d60);stroke-width:0.18}
svg.drawing .pen-grain{stroke:var(--draw-hatching,#98958f);stroke-width:0.18}
svg.drawing .pen-hatching{stroke:var(--draw-hatching,#98958f);stroke-width:0.13}
svg.drawing .pen-ghost{stroke:var(--draw-soft,#5d5d60);stroke-width:0.25;stroke-linecap:butt;stroke-dasharray:4.5 0.9 0.5 0.9 0.5 0.9}
svg.drawing .fill-paper{fill:var(--draw-paper,#fff)}
svg.drawing .fill-steel{fill:var(--draw-steel,#dfe2e6)}
svg.drawing text{fill:var(--draw-ink,#2a2a2c);stroke:none;font-family:"IBM Plex Sans",sans-serif;font-weight:400;font-kerning:none}
svg.drawing text.strong{font-weight:600}
`

// dark sets the colours for dark screens in a file by itself.
const dark = `@media screen and (prefers-color-scheme:dark){svg.drawing{--draw-ink:#e8e6e1;--draw-soft:#aaa69e;--draw-saw:#ff9a7a;--draw-hatching:#77736b;--draw-paper:#1d1c1a;--draw-steel:#3a3d42;background:#1d1c1a}}
`

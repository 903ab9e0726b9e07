//! Curves and points on axes, in black on white.

use plotters::prelude::*;

const GREY: RGBColor = RGBColor(130, 130, 130);

/// How a curve is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Ink {
    Line,
    Dashed,
    Thin,
    Dots,
    Cross,
}

/// Points that belong together, and what they are.
#[derive(Clone, Debug)]
pub struct Curve {
    name: String,
    ink: Ink,
    points: Vec<(f64, f64)>,
}

impl Curve {
    fn of(ink: Ink, name: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve { name: name.to_owned(), ink, points }
    }

    /// A strong line.
    pub fn line(name: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve::of(Ink::Line, name, points)
    }

    /// A dashed line.
    pub fn dashed(name: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve::of(Ink::Dashed, name, points)
    }

    /// A thin, grey line.
    pub fn thin(name: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve::of(Ink::Thin, name, points)
    }

    /// Points by themselves.
    pub fn dots(name: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve::of(Ink::Dots, name, points)
    }

    /// One point that stands out.
    pub fn cross(name: &str, point: (f64, f64)) -> Curve {
        Curve::of(Ink::Cross, name, vec![point])
    }
}

/// A drawing of curves.
#[derive(Clone, Debug)]
pub struct Plot {
    /// What it shows.
    pub title: String,
    /// What goes across, and what goes up.
    pub across: String,
    /// See above.
    pub up: String,
    /// Whether both go equally far to every side of zero: a plane of directions.
    pub square: bool,
    /// What is drawn.
    pub curves: Vec<Curve>,
    /// What is said below.
    pub notes: Vec<String>,
}

const WIDTH: u32 = 900;
const FONT: &str = "sans-serif";

impl Plot {
    /// The drawing as SVG.
    ///
    /// # Errors
    /// As the library that draws it: where the page is too small for what stands on it.
    pub fn draw(&self) -> Result<String, String> {
        self.drawn().map_err(|error| error.to_string())
    }

    fn drawn(&self) -> Result<String, Box<dyn std::error::Error>> {
        let notes: Vec<String> =
            self.notes.iter().flat_map(|note| textwrap::wrap(note, 140)).map(|line| line.into_owned()).collect();
        let chart_height = if self.square { 800 } else { 520 };
        let height = chart_height + 26 + 19 * notes.len() as u32;
        let mut drawing = String::new();
        {
            let root = SVGBackend::with_string(&mut drawing, (WIDTH, height)).into_drawing_area();
            root.fill(&WHITE)?;
            let (chart, words) = root.split_vertically(chart_height);
            let (x, y) = self.ranges();
            let mut axes = ChartBuilder::on(&chart)
                .caption(&self.title, (FONT, 20))
                .margin(18)
                .x_label_area_size(44)
                .y_label_area_size(58)
                .build_cartesian_2d(x, y)?;
            axes.configure_mesh()
                .x_desc(&self.across)
                .y_desc(&self.up)
                .x_label_formatter(&|x| short(*x))
                .y_label_formatter(&|y| short(*y))
                .label_style((FONT, 15))
                .light_line_style(WHITE)
                .bold_line_style(GREY.mix(0.35))
                .draw()?;
            for curve in &self.curves {
                let (points, name) = (curve.points.clone(), curve.name.as_str());
                let strong = BLACK.stroke_width(2);
                match curve.ink {
                    Ink::Line | Ink::Thin => {
                        let style = if curve.ink == Ink::Thin { GREY.stroke_width(2) } else { strong };
                        let sign = move |(x, y): (i32, i32)| PathElement::new([(x, y), (x + 24, y)], style);
                        axes.draw_series(LineSeries::new(points, style))?.label(name).legend(sign);
                    }
                    Ink::Dashed => {
                        axes.draw_series(DashedLineSeries::new(points, 9, 6, strong))?.label(name).legend(
                            |(x, y): (i32, i32)| {
                                plotters::element::DashedPathElement::new(
                                    [(x, y), (x + 24, y)],
                                    6,
                                    4,
                                    BLACK.stroke_width(2),
                                )
                            },
                        );
                    }
                    Ink::Dots => {
                        axes.draw_series(points.iter().map(|point| Circle::new(*point, 4, BLACK.stroke_width(1))))?
                            .label(name)
                            .legend(|(x, y)| Circle::new((x + 12, y), 4, BLACK.stroke_width(1)));
                    }
                    Ink::Cross => {
                        axes.draw_series(points.iter().map(|point| Cross::new(*point, 9, BLACK.stroke_width(3))))?
                            .label(name)
                            .legend(|(x, y)| Cross::new((x + 12, y), 7, BLACK.stroke_width(3)));
                    }
                }
            }
            axes.configure_series_labels()
                .position(if self.square { SeriesLabelPosition::UpperRight } else { SeriesLabelPosition::UpperMiddle })
                .background_style(WHITE.mix(0.85))
                .border_style(GREY)
                .label_font((FONT, 14))
                .draw()?;
            for (place, note) in notes.iter().enumerate() {
                words.draw(&plotters::element::Text::new(note.as_str(), (20, 4 + 19 * place as i32), (FONT, 14)))?;
            }
            root.present()?;
        }
        Ok(drawing)
    }

    fn ranges(&self) -> (std::ops::Range<f64>, std::ops::Range<f64>) {
        let all = || self.curves.iter().flat_map(|curve| &curve.points);
        let most = |of: &dyn Fn(&(f64, f64)) -> f64| all().map(of).fold(0.0, f64::max);
        if self.square {
            // whole quarters of a dioptre, so that the grid is even
            let far = f64::from((most(&|(x, y)| x.abs().max(y.abs())) * 4.4) as u32 + 1) / 4.0;
            return (-far..far, -far..far);
        }
        let least = all().map(|(x, _)| *x).fold(0.0, f64::min);
        // above the highest curve there is room for what they are called
        let room = 0.95 - 0.055 * self.curves.len() as f64;
        let low = all().map(|(_, y)| *y).fold(0.0, f64::min);
        (least..most(&|(x, _)| *x), low..low + (most(&|(_, y)| *y) - low) / room)
    }
}

/// A number on an axis, without decimals that say nothing.
fn short(value: f64) -> String {
    let text = format!("{value:.2}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

//! Amounts as the file writes them: texts that are read when the design is resolved, so that a bad one can be named and
//! left out while everything else is still reckoned.

use serde::Deserialize;

macro_rules! written {
    ($(#[$doc:meta])* $name:ident, $title:literal, $type:tt, $about:literal, $pattern:literal, $examples:tt) => {
        $(#[$doc])*
        #[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
        pub struct $name(pub String);

        impl AsRef<str> for $name {
            fn as_ref(&self) -> &str {
                &self.0
            }
        }

        impl schemars::JsonSchema for $name {
            fn schema_name() -> std::borrow::Cow<'static, str> {
                $title.into()
            }

            fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
                schemars::json_schema!({
                    "type": $type,
                    "description": $about,
                    "pattern": $pattern,
                    "examples": $examples
                })
            }
        }
    };
}

written!(
    /// An angle with its unit.
    AngleText,
    "Angle",
    "string",
    "An angle in degrees: 20 deg or 20°.",
    "^\\s*[+-]?[0-9.]+\\s*(deg|degrees?|°)\\s*$",
    ["20 deg", "-15°"]
);
written!(
    /// A colour.
    ColourText,
    "Colour",
    "string",
    "A colour: white, cream, sand, ochre, terracotta, brick, brown, sage, blue, grey, slate, charcoal, or red, green and blue of sRGB as six hexadecimal figures, such as '#d8c9a8', in quotes.",
    "^\\s*(#[0-9A-Fa-f]{6}|[A-Za-z]+)\\s*$",
    ["sand", "#d8c9a8"]
);
written!(
    /// A price with its currency.
    PriceText,
    "Price",
    "string",
    "A price with its currency: 11.80 USD, USD 11.80, $11.80, € 9.50 or £ 3.",
    "^\\s*([A-Z]{3}|US\\$|[$€£])\\s*[0-9]+(\\.[0-9]{1,2})?\\s*$|^\\s*[0-9]+(\\.[0-9]{1,2})?\\s*([A-Z]{3}|US\\$|[$€£])\\s*$",
    ["11.80 USD", "€ 9.50"]
);
written!(
    /// A currency by its code.
    CurrencyText,
    "Currency",
    "string",
    "A currency by the three capital letters of ISO 4217.",
    "^[A-Z]{3}$",
    ["USD", "EUR"]
);
written!(
    /// A scale.
    ScaleText,
    "Scale",
    "string",
    "A scale: 1:12 is a twelfth of the true size.",
    "^\\s*1\\s*:\\s*[0-9.]+\\s*$",
    ["1:12", "1:20"]
);
written!(
    /// A share in percent.
    ShareText,
    "Share",
    "string",
    "A share in percent: 10 % or 8.25 %.",
    "^\\s*[0-9.]+\\s*(%|percent|per cent)\\s*$",
    ["10 %", "8.25 %"]
);
written!(
    /// An area with its unit.
    AreaText,
    "Area",
    "string",
    "An area with its unit: 20 sq ft, 20 ft2 or 1.9 m2.",
    "^\\s*[0-9.].*(ft|foot|feet|in|inch|inches|m|metres|meters)[2²]?\\.?\\s*$",
    ["20 sq ft", "1.9 m2"]
);
written!(
    /// A volume with its unit.
    VolumeText,
    "Volume",
    "string",
    "A volume with its unit: 0.60 cu ft, 0.6 ft3, 17 L, 3 qt, 1 gal (both of the United States) or 0.02 m3.",
    "^\\s*[0-9.].*(ft|foot|feet|yd|yards|m|metres|meters|[lL]|lit(re|er)s?|m[lL]|qt|quarts?|gal|gallons?)[3³]?\\.?\\s*$",
    ["0.60 cu ft", "17 L", "3 qt"]
);
written!(
    /// A weight with its unit.
    MassText,
    "Weight",
    "string",
    "A weight with its unit: 80 lb, 9 oz, 36 kg or 500 g.",
    "^\\s*[0-9.].*(lbs?|pounds?|oz|ounces?|kg|g)\\.?\\s*$",
    ["80 lb", "36 kg"]
);
written!(
    /// A whole number.
    CountText,
    "Count",
    ["string", "integer"],
    "A whole number.",
    "^\\s*[0-9]+\\s*$",
    [2, 100]
);
written!(
    /// A strength or pressure with its unit.
    StressText,
    "Pressure",
    "string",
    "A strength or pressure with its unit: 4,000 psi, 28 MPa, 2,000 psf, 96 kPa, 0.5 in w.c. or 1.2 mbar.",
    "^\\s*[0-9.].*(psi|ksi|psf|k?Pa|MPa|N/mm[2²]|mbar|hPa|in w\\.?c\\.?|inches of water)\\s*$",
    ["4,000 psi", "28 MPa", "0.5 in w.c."]
);
written!(
    /// Heat or power with its unit.
    PowerText,
    "Power",
    "string",
    "Heat or power with its unit: 60,000 Btu/h or 17.5 kW.",
    "^\\s*[0-9.].*([Bb][Tt][Uu]/?hr?|BTUH|MBH|k?W)\\s*$",
    ["60,000 Btu/h", "17.5 kW"]
);
written!(
    /// A fall over a length.
    SlopeText,
    "Slope",
    "string",
    "A fall over a length: 1/8 in per ft, 10 mm per m or 1 %.",
    "^\\s*[0-9.].*( per .*(ft|m|in|mm)|%)\\s*$",
    ["1/8 in per ft", "10 mm per m"]
);
written!(
    /// A temperature with its unit.
    TemperatureText,
    "Temperature",
    "string",
    "A temperature with its unit: 72 °F, 72 F or 22 °C.",
    "^\\s*[+-]?[0-9.].*(F|C)\\s*$",
    ["72 °F", "22 °C"]
);
written!(
    /// A speed with its unit.
    SpeedText,
    "Speed",
    "string",
    "A speed with its unit: 8 mph, 12 km/h, 3.5 m/s or 6 kn.",
    "^\\s*[0-9.].*(mph|mi/h|miles an hour|km/?h|kph|m/s|kn|kt|knots)\\s*$",
    ["8 mph", "12 km/h"]
);
written!(
    /// How long something takes, with its unit.
    TimeSpanText,
    "Time",
    "string",
    "A time with its unit: 30 min, 4 h, 1-1/2 h, 7 d or 2 weeks.",
    "^\\s*[0-9.].*(min|minutes?|h|hrs?|hours?|d|days?|weeks?)\\s*$",
    ["30 min", "4 h", "7 d"]
);
written!(
    /// A date and an hour.
    MomentText,
    "Moment",
    "string",
    "A date with the time on the clock of the place: 2027-05-14T05:00; a date alone is its midnight.",
    "^\\s*[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}([Tt ]\\s*[0-9]{1,2}:[0-9]{2}(:00)?)?\\s*$",
    ["2027-05-14T05:00", "2027-05-14"]
);
written!(
    /// The sun's power on level ground.
    IrradianceText,
    "Sunshine",
    "string",
    "The sun's power on level ground: 650 W/m2.",
    "^\\s*[0-9.].*W/m[2²]\\s*$",
    ["650 W/m2"]
);
written!(
    /// A spot level, or where it was taken.
    LevelText,
    "Level",
    "string",
    "A distance with its unit, of a spot level: 3-1/8 in, -1/4 in, 12 mm; '-' in a grid where none was taken.",
    "^\\s*-\\s*$|^\\s*[+-]?\\s*[0-9.]+.*(mm|cm|m|in|inch|inches|ft|foot|feet|['\"’”′″])\\.?\\s*$",
    ["3-1/8 in", "12 mm"]
);

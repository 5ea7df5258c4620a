//! Products, their shapes, and where one stands in another.

use super::exchange::{Data, Id, List, Text};
use super::shape::{axes, solid};
use crate::geometry::{Axes, Boundary, Placement, Point3, Vector3};

/// What all products of a file share.
pub(super) struct Contexts {
    product: Id,
    definition: Id,
    geometry: Id,
    /// The axes of every product.
    origin: Id,
}

/// A product that is there: its definition and its shape.
#[derive(Clone, Copy)]
pub(super) struct Product {
    definition: Id,
    shape: Id,
}

/// One use of a product in another.
pub(super) struct Use<'a> {
    pub product: Product,
    /// Unique in the file. Readers show it, unless the use has a description, so it has none.
    pub mark: &'a str,
    pub placement: Placement,
}

/// The axes of a placement.
fn placed(placement: &Placement) -> Axes {
    Axes {
        origin: placement * Point3::origin(),
        z: placement * Vector3::z(),
        x: placement * Vector3::x(),
    }
}

impl Contexts {
    /// Millimetres, radians; corners nearer than a ten-thousandth of a thousandth are one.
    pub fn new(data: &mut Data) -> Self {
        let application =
            data.add("APPLICATION_CONTEXT('core data for automotive mechanical design processes')");
        data.add(format_args!(
            "APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,{application})"
        ));
        let product = data.add(format_args!(
            "PRODUCT_CONTEXT('',{application},'mechanical')"
        ));
        let definition = data.add(format_args!(
            "PRODUCT_DEFINITION_CONTEXT('part definition',{application},'design')"
        ));
        let length = data.add("(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))");
        let angle = data.add("(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))");
        let solid = data.add("(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())");
        let close = data.add(format_args!(
            "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-07),{length},'distance_accuracy_value','')"
        ));
        let geometry = data.add(format_args!(
            "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT(({close}))\
             GLOBAL_UNIT_ASSIGNED_CONTEXT(({length},{angle},{solid}))\
             REPRESENTATION_CONTEXT('','3D'))"
        ));
        let origin = axes(data, &placed(&Placement::identity()));
        Self {
            product,
            definition,
            geometry,
            origin,
        }
    }

    /// A product of one solid.
    pub fn part(&self, data: &mut Data, [id, name, about]: [&str; 3], shape: &Boundary) -> Product {
        let body = solid(data, shape, name);
        let shape = data.add(format_args!(
            "ADVANCED_BREP_SHAPE_REPRESENTATION({},({},{body}),{})",
            Text(name),
            self.origin,
            self.geometry
        ));
        self.product(data, [id, name, about], shape)
    }

    /// A product that is put together of others.
    pub fn assembly(&self, data: &mut Data, [id, name]: [&str; 2], uses: &[Use]) -> Product {
        let places: Vec<Id> = uses
            .iter()
            .map(|u| axes(data, &placed(&u.placement)))
            .collect();
        let items: Vec<Id> = std::iter::once(self.origin)
            .chain(places.iter().copied())
            .collect();
        let shape = data.add(format_args!(
            "SHAPE_REPRESENTATION({},{},{})",
            Text(name),
            List(&items),
            self.geometry
        ));
        let whole = self.product(data, [id, name, ""], shape);
        for (used, place) in uses.iter().zip(places) {
            self.occurrence(data, whole, used, place);
        }
        whole
    }

    fn product(&self, data: &mut Data, [id, name, about]: [&str; 3], shape: Id) -> Product {
        let product = data.add(format_args!(
            "PRODUCT({},{},{},({}))",
            Text(id),
            Text(name),
            Text(about),
            self.product
        ));
        data.add(format_args!(
            "PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,({product}))"
        ));
        let version = data.add(format_args!(
            "PRODUCT_DEFINITION_FORMATION('','',{product})"
        ));
        let definition = data.add(format_args!(
            "PRODUCT_DEFINITION('design','',{version},{})",
            self.definition
        ));
        let own = data.add(format_args!("PRODUCT_DEFINITION_SHAPE('','',{definition})"));
        data.add(format_args!(
            "SHAPE_DEFINITION_REPRESENTATION({own},{shape})"
        ));
        Product { definition, shape }
    }

    fn occurrence(&self, data: &mut Data, whole: Product, used: &Use, place: Id) {
        let mark = Text(used.mark);
        let (part, own) = (used.product, self.origin);
        let occurrence = data.add(format_args!(
            "NEXT_ASSEMBLY_USAGE_OCCURRENCE({mark},{mark},'',{},{},$)",
            whole.definition, part.definition
        ));
        let shape = data.add(format_args!("PRODUCT_DEFINITION_SHAPE('','',{occurrence})"));
        let moved = data.add(format_args!(
            "ITEM_DEFINED_TRANSFORMATION('','',{own},{place})"
        ));
        let relation = data.add(format_args!(
            "(REPRESENTATION_RELATIONSHIP('','',{},{})\
             REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION({moved})\
             SHAPE_REPRESENTATION_RELATIONSHIP())",
            part.shape, whole.shape
        ));
        data.add(format_args!(
            "CONTEXT_DEPENDENT_SHAPE_REPRESENTATION({relation},{shape})"
        ));
    }
}

//! `tw_duty_*`: how much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.

mod bus;
mod cycles;
mod damage;
mod life;
mod mesh;
mod rank;
mod screen;
mod wheels;

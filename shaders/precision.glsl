// Without these, integer and 3D samplers have no or low precision.
precision highp float;
precision highp int;
precision highp sampler2D;
precision highp usampler2D;
precision highp sampler3D;

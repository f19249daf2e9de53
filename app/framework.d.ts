// What the framework lets us import: style sheets and pictures. Its own next-env.d.ts says the same
// but is only there after a build, and types are checked before.
/// <reference types="next" />
/// <reference types="next/image-types/global" />

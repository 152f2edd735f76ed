/** How the ground under a footpad gives. */
export type Soil =
  /** Only the legs give. */
  | { readonly kind: 'rigid' }
  /** Elastic up to the bearing strength, then sinks without limit and stays sunk. */
  | {
      readonly kind: 'bearing';
      /** Elastic stiffness under one footpad [N/m]. */
      readonly stiffness: number;
      /** Bearing strength [Pa]. */
      readonly strength: number;
    }
  /** Pressure-sinkage law p = (cohesive / width + frictional) sinkage^exponent; unloads along `stiffness`. */
  | {
      readonly kind: 'bekker';
      /** k_c [N/m^(exponent + 1)]. */
      readonly cohesive: number;
      /** k_phi [N/m^(exponent + 2)]. */
      readonly frictional: number;
      /** n [-]. */
      readonly exponent: number;
      /** Of unloading and reloading under one footpad [N/m]. */
      readonly stiffness: number;
    };

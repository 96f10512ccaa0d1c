/** Lower-triangular L with L Lᵀ = the symmetric positive definite matrix, row-major; throws where it is not positive definite. */
export function lowerCholesky(matrix: Float64Array, n: number): Float64Array {
  const root = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * n + j];
      for (let k = 0; k < j; k++) sum -= root[i * n + k] * root[j * n + k];
      if (i > j) root[i * n + j] = sum / root[j * n + j];
      else if (sum > 0) root[i * n + i] = Math.sqrt(sum);
      else throw new RangeError(`invalid matrix: pivot ${sum} in row ${i} (expected positive definite)`);
    }
  }
  return root;
}

/** Inverse of a symmetric positive definite matrix, row-major; throws where it is not positive definite. */
export function inverseOf(matrix: Float64Array, n: number): Float64Array {
  const root = lowerCholesky(matrix, n);
  // Columns of the root's own inverse, then inverse = (L⁻¹)ᵀ L⁻¹.
  const back = new Float64Array(n * n);
  for (let j = 0; j < n; j++) {
    back[j * n + j] = 1 / root[j * n + j];
    for (let i = j + 1; i < n; i++) {
      let sum = 0;
      for (let k = j; k < i; k++) sum += root[i * n + k] * back[k * n + j];
      back[i * n + j] = -sum / root[i * n + i];
    }
  }
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += back[k * n + i] * back[k * n + j];
      inverse[i * n + j] = inverse[j * n + i] = sum;
    }
  }
  return inverse;
}

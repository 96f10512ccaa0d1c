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

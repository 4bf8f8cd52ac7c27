package org.scrubline.rubric;

import java.util.Collection;
import java.util.List;
import java.util.NoSuchElementException;

/** The complexity factors of a programme. */
public record ComplexityFactors(List<ComplexityFactor> factors) {

    public ComplexityFactors {
        factors = List.copyOf(factors);
    }

    /**
     * The factor with this code.
     *
     * @throws NoSuchElementException when there is no such factor
     */
    public ComplexityFactor factor(String code) {
        return factors.stream()
                .filter(factor -> factor.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("No complexity factor " + code));
    }

    /** Band of a case with these factors; a factor named twice counts once. */
    public Band band(Collection<String> codes) {
        return Band.ofPoints(codes.stream()
                .distinct()
                .mapToInt(code -> factor(code).technicalPoints())
                .sum());
    }
}

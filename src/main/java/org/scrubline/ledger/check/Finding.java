package org.scrubline.ledger.check;

import java.util.Arrays;
import java.util.List;

/**
 * Something that is wrong.
 *
 * @param kind name of the {@link org.scrubline.ledger.LeafKind} it is about, empty when it is about none
 * @param arguments see {@link Problem}
 */
public record Finding(Problem problem, String kind, List<String> arguments) {

    static Finding of(Problem problem, String kind, Object... arguments) {
        return new Finding(
                problem, kind, Arrays.stream(arguments).map(Object::toString).toList());
    }
}

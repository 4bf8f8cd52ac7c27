package org.scrubline.command;

import org.junit.jupiter.api.DynamicContainer;
import org.junit.jupiter.api.DynamicNode;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;

/**
 * {@link ReferenceTests} as one test, for the mutation profile alone: a changed class is tried against each test by
 * itself, and every key by itself would run all files again.
 */
class AllReferencesTests {

    @Test
    void everyKeyOfEveryFileHolds() throws Throwable {
        for (DynamicNode file : new ReferenceTests().everyExpectedKeyIsProducedWithinItsTolerance()) {
            for (DynamicNode key : ((DynamicContainer) file).getChildren().toList()) {
                ((DynamicTest) key).getExecutable().execute();
            }
        }
    }
}

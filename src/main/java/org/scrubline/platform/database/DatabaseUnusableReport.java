package org.scrubline.platform.database;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Prints the one sentence instead of a stack of causes. */
class DatabaseUnusableReport extends AbstractFailureAnalyzer<DatabaseUnusable> {

    @Override
    protected @Nullable FailureAnalysis analyze(Throwable rootFailure, DatabaseUnusable cause) {
        return new FailureAnalysis(cause.getMessage(), null, cause);
    }
}

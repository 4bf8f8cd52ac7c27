package org.scrubline.platform.production;

import org.jspecify.annotations.Nullable;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Prints the sentences instead of a stack of causes. */
class UnsafeSettingsReport extends AbstractFailureAnalyzer<UnsafeSettings> {

    @Override
    protected @Nullable FailureAnalysis analyze(Throwable rootFailure, UnsafeSettings cause) {
        return new FailureAnalysis(
                cause.getMessage(), "Change these settings, or leave the production profile.", cause);
    }
}

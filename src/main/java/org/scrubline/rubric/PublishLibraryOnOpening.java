package org.scrubline.rubric;

import org.scrubline.platform.OrganisationOpened;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Gives a new organisation without rubrics the shipped ones, so that its first case can be scored. */
@Component
class PublishLibraryOnOpening {

    private final Rubrics rubrics;

    PublishLibraryOnOpening(Rubrics rubrics) {
        this.rubrics = rubrics;
    }

    @EventListener
    void opened(OrganisationOpened event) {
        if (rubrics.published().isEmpty()) {
            rubrics.publishLibrary(event.administratorId()).orThrow();
        }
    }
}

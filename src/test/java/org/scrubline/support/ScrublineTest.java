package org.scrubline.support;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.scrubline.platform.database.TestDatabase;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;

/** The whole application on the shared test database. All such tests share one context; each makes its own organisation. */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(properties = "spring.datasource.url=test")
@AutoConfigureMockMvc
@Import({TestDatabase.class, TestOrganisations.class, History.class})
public @interface ScrublineTest {}

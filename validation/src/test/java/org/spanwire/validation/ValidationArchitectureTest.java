package org.spanwire.validation;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Holds the validation, tests included, to the library's public packages. */
@AnalyzeClasses(packages = "org.spanwire.validation")
class ValidationArchitectureTest {

  @ArchTest
  static final ArchRule usesTheLibraryAsItsUsersDo =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("org.spanwire.internal..", "org.spanwire.cli..");
}

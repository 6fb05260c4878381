package org.spanwire;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import com.tngtech.archunit.library.dependencies.SliceAssignment;
import com.tngtech.archunit.library.dependencies.SliceIdentifier;
import java.io.IOException;
import java.io.InputStream;
import java.lang.module.ModuleDescriptor;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Holds the packages of the library to their order. */
@AnalyzeClasses(packages = "org.spanwire", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String ROOT = "org.spanwire";
  private static final String INTERNAL = ROOT + ".internal..";

  /**
   * The packages from top to bottom, below {@link #ROOT}; the door itself is the empty name. Each
   * may use only those on lower lines: packages on one line do not know each other. A package that
   * stands here need not exist yet; one that exists must stand here.
   */
  private static final List<Set<String>> LAYERS =
      List.of(
          Set.of("study"),
          Set.of("practice"),
          Set.of("design"),
          Set.of(""),
          Set.of("circuit"),
          Set.of("internal.field"),
          Set.of("internal.moment"),
          Set.of("internal.basis"),
          Set.of("internal.halfspace", "internal.kernel"),
          Set.of("internal.mesh"),
          Set.of("result"),
          Set.of("geometry"),
          Set.of("medium"),
          Set.of("internal.linear"),
          Set.of("internal.math"),
          Set.of("unit"));

  @ArchTest
  static final ArchRule everyPackageHasItsLayer =
      classes().should(haveALayer()).because("a new package is a decision: add it to LAYERS");

  @ArchTest
  static final ArchRule dependenciesPointDownwards = classes().should(useOnlyLowerLayers());

  @ArchTest
  static final ArchRule packagesAreFreeOfCycles =
      slices().assignedFrom(packages()).should().beFreeOfCycles();

  @ArchTest
  static final ArchRule whatUsesTheDoorLeavesTheEngineAlone =
      noClasses()
          .that()
          .resideInAnyPackage(ROOT + ".study..", ROOT + ".practice..", ROOT + ".design..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage(INTERNAL)
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule resultsCannotCompute =
      noClasses()
          .that()
          .resideInAPackage(ROOT + ".result..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage(INTERNAL)
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule theApiShowsNoInternalType =
      classes()
          .that()
          .resideOutsideOfPackage(INTERNAL)
          .should(showNoInternalType())
          .because("users of the module cannot name a type of an unexported package");

  @ArchTest
  static void theModuleExportsExactlyThePublicPackages(JavaClasses library)
      throws IOException, URISyntaxException {
    URI classes = Antenna.class.getProtectionDomain().getCodeSource().getLocation().toURI();
    Set<String> exported;
    try (InputStream in = Files.newInputStream(Path.of(classes).resolve("module-info.class"))) {
      exported =
          ModuleDescriptor.read(in).exports().stream()
              .map(ModuleDescriptor.Exports::source)
              .collect(Collectors.toSet());
    }

    Set<String> publicPackages =
        library.stream()
            .filter(JavaClass.Predicates.resideOutsideOfPackage(INTERNAL))
            .map(JavaClass::getPackageName)
            .filter(name -> !name.isEmpty())
            .collect(Collectors.toSet());

    assertThat(exported)
        .as("exports in module-info.java")
        .containsExactlyInAnyOrderElementsOf(publicPackages);
  }

  @ArchTest
  static final ArchRule theLibraryNeverEndsTheProcess =
      noClasses()
          .should()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .dependOnClassesThat()
          .resideInAnyPackage("java.util.logging..", "java.lang.reflect..");

  @ArchTest
  static final ArchRule noStateIsShared =
      classes().should(holdNoMutableStatic()).because("a solver must be safe to use twice at once");

  private static ArchCondition<JavaClass> haveALayer() {
    return new ArchCondition<>("stand in a package that has a layer") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        if (layerOf(type) < 0) {
          events.add(SimpleConditionEvent.violated(type, type.getName() + " has no layer"));
        }
      }
    };
  }

  private static ArchCondition<JavaClass> useOnlyLowerLayers() {
    return new ArchCondition<>("use only packages of lower layers") {
      @Override
      public void check(JavaClass origin, ConditionEvents events) {
        origin.getDirectDependenciesFromSelf().stream()
            .filter(dependency -> isOurs(dependency.getTargetClass()))
            .filter(
                dependency -> !mayUse(origin, dependency.getTargetClass().getBaseComponentType()))
            .forEach(d -> events.add(SimpleConditionEvent.violated(origin, d.getDescription())));
      }
    };
  }

  private static ArchCondition<JavaClass> showNoInternalType() {
    return new ArchCondition<>("show no internal type in what users see") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        if (!isVisible(type)) {
          return;
        }
        Stream<JavaType> parents =
            Stream.concat(type.getSuperclass().stream(), type.getInterfaces().stream());
        report(type, type.getDescription(), parents, events);
        for (JavaMember member : type.getMembers()) {
          if (isVisible(member.getModifiers())) {
            report(type, member.getDescription(), typesOf(member), events);
          }
        }
      }
    };
  }

  private static void report(
      JavaClass owner, String where, Stream<JavaType> types, ConditionEvents events) {
    types
        .flatMap(type -> type.getAllInvolvedRawTypes().stream())
        .map(JavaClass::getBaseComponentType)
        .filter(JavaClass.Predicates.resideInAPackage(INTERNAL))
        .distinct()
        .forEach(
            internal ->
                events.add(
                    SimpleConditionEvent.violated(owner, where + " shows " + internal.getName())));
  }

  private static Stream<JavaType> typesOf(JavaMember member) {
    if (member instanceof JavaField field) {
      return Stream.of(field.getType());
    }
    JavaCodeUnit code = (JavaCodeUnit) member;
    return Stream.of(
            Stream.of(code.getReturnType()),
            code.getParameterTypes().stream(),
            code.getExceptionTypes().stream().map(JavaType.class::cast))
        .flatMap(types -> types);
  }

  private static ArchCondition<JavaClass> holdNoMutableStatic() {
    return new ArchCondition<>("hold no static field that can be reassigned") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        type.getFields().stream()
            .filter(field -> field.getModifiers().contains(JavaModifier.STATIC))
            .filter(field -> !field.getModifiers().contains(JavaModifier.FINAL))
            .filter(field -> !field.getModifiers().contains(JavaModifier.SYNTHETIC))
            .forEach(f -> events.add(SimpleConditionEvent.violated(type, f.getDescription())));
      }
    };
  }

  private static boolean isVisible(JavaClass type) {
    return isVisible(type.getModifiers())
        && type.getEnclosingClass().map(ArchitectureTest::isVisible).orElse(true);
  }

  private static boolean isVisible(Set<JavaModifier> modifiers) {
    return modifiers.contains(JavaModifier.PUBLIC) || modifiers.contains(JavaModifier.PROTECTED);
  }

  private static boolean mayUse(JavaClass origin, JavaClass target) {
    int from = layerOf(origin);
    int to = layerOf(target);
    return to > from || (to == from && layerNameOf(origin).equals(layerNameOf(target)));
  }

  private static boolean isOurs(JavaClass type) {
    String name = type.getBaseComponentType().getPackageName();
    return name.equals(ROOT) || name.startsWith(ROOT + ".");
  }

  private static int layerOf(JavaClass type) {
    String name = layerNameOf(type);
    for (int i = 0; i < LAYERS.size(); i++) {
      if (LAYERS.get(i).contains(name)) {
        return i;
      }
    }
    return -1;
  }

  /** The listed package that a type stands in or below; its own package name where none is. */
  private static String layerNameOf(JavaClass type) {
    String name = type.getPackageName();
    String below = name.equals(ROOT) ? "" : name.substring(ROOT.length() + 1);
    return LAYERS.stream()
        .flatMap(Set::stream)
        .filter(layer -> below.equals(layer) || (!layer.isEmpty() && below.startsWith(layer + ".")))
        .findFirst()
        .orElse(below);
  }

  private static SliceAssignment packages() {
    return new SliceAssignment() {
      @Override
      public SliceIdentifier getIdentifierOf(JavaClass type) {
        return isOurs(type) ? SliceIdentifier.of(type.getPackageName()) : SliceIdentifier.ignore();
      }

      @Override
      public String getDescription() {
        return "packages";
      }
    };
  }
}

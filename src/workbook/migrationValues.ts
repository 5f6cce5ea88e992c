/**
 * What the numbered steps fill in where an older document has nothing, as it was when each format was released.
 * These are facts of the past: a default that changes today leaves them alone, so a document opens to the same
 * figures for good.
 */
import type { JsonObject } from './json';

export interface FilledIn {
  /** Of the inputs outside of lists. */
  readonly fields: JsonObject;
  /** Of each entry of a list, by the place of the list. */
  readonly entries: JsonObject;
}

export const filledByFormat3: FilledIn = {
  fields: {
    plies: {
      patches: [],
      resinLostPercent: null,
      voidPercent: null,
      cureTemperatureC: 120,
      roomTemperatureC: 20,
      cureShrinkagePercent: 0.5,
      plannedLayupH: 6,
      coatFace: 'none',
      coatThicknessMm: 0.15,
      coatSetC: 20,
    },
    closing: {
      clamps: [
        {
          id: 'clamps-1',
          placed: 'round the rim',
          count: 8,
          forceN: 150,
          atOpeningMm: 0,
          springRateNPerMm: 8,
          secondForceN: 0,
          secondOpeningMm: 0,
          xMm: 0,
          yMm: 0,
        },
      ],
      bedLaw: 'by weave',
      bedPoints: [],
      scatterPercent: 40,
      debulkedMm: 0,
      debulkFactor: 0.9,
      lands: 'stone on stone',
      shimMm: 0,
      frictionCoefficient: 0.25,
      resin: 'trapped',
      wantedFiberFraction: 0.5,
      acceptedStandOffMm: 0.1,
      flowTemperatureC: 70,
      humidityPercent: 50,
    },
    mold: {
      boxShape: 'rectangle',
      stoneType: '4',
      pourMethod: 'pressed in',
      coverXLowMm: 10,
      coverXHighMm: 10,
      coverYLowMm: 10,
      coverYHighMm: 10,
      coverOverShowMm: 10,
      coverUnderRimMm: 10,
      landWidthMm: 10,
      cornerRadiusMm: 10,
      wallDraftDeg: 0,
      keyCount: 4,
      keyDiameterMm: 5,
      keyHeightMm: 2,
      prySlotCount: 2,
      prySlotWidthMm: 12,
      prySlotDepthMm: 3,
      prySlotHeightMm: 2,
      leastStoneMm: 5,
      sheetMm: 5,
      freeboardMm: 10,
      degreeOfReactionPercent: 100,
      lossPercent: 10,
      bowlMl: 750,
      bowlFillPercent: 60,
      mixingMin: 1,
      pouringMlPerMin: 200,
      roomC: 21,
      patternDensityGCm3: 1.24,
      patternSoftensC: 55,
      counterweightMargin: 1.5,
      printScale: 1,
      printShrinkPercent: 0,
      stoneExpansionPerMK: 16,
      laminateExpansionPerMK: 3,
      gelC: 70,
      sizeToleranceMm: 0.3,
      sealerCoats: 2,
      sealerM2PerL: 8,
      sealerWaitMin: 30,
      releaseCoats: 3,
      releaseM2PerL: 15,
      releaseWaitMin: 15,
      coatLossPercent: 30,
      dryingC: 45,
      dryingHours: 24,
      scaleStepG: 1,
      bag: {
        waterPowderRatio: null,
        workingMin: null,
        initialSetMin: null,
        finalSetMin: null,
        demoldMin: null,
        settingExpansionPercent: null,
        strengthMPa: null,
        pricePerKg: null,
      },
      measured: {
        settingExpansionPercent: null,
        slurryGMl: null,
        patternG: null,
        peakC: null,
        printXMm: null,
        printYMm: null,
        printZMm: null,
      },
      wanted: {
        xMm: null,
        yMm: null,
        zMm: null,
      },
      dryingLog: [],
      repairs: [],
    },
    cure: {
      air: 'fan',
      support: 'rack',
      drying: 'wicks',
      sealedFaces: 'none',
      patternInside: 'out',
      startC: 20,
      ovenLagS: 180,
      ovenFastestKPerMin: 8,
      overshootK: 3,
      ownFilmWPerM2K: 18,
      trayGapMm: 0.2,
      freeWaterLeftPercent: 5,
      dehydrationRateFactor: 1,
      stoneConductivityWPerMK: 0.8,
      stoneHeatJPerKgK: 1080,
      stoneLimitC: 130,
      patternLimitC: 50,
      clampLimitC: 150,
      demoldC: 50,
      voxelMm: 2,
      stages: [
        {
          targetC: 70,
          rampKPerMin: 1,
          dwellHours: 3,
        },
        {
          targetC: 120,
          rampKPerMin: 1,
          dwellHours: 1.5,
        },
      ],
      supplierCures: [],
      kineticsForm: 'none',
      kinetics: {
        k1PerS: null,
        k1EnergyKJPerMol: null,
        k2PerS: null,
        k2EnergyKJPerMol: null,
        m: null,
        n: null,
        sharpness: null,
        criticalCure: null,
        criticalCurePerK: null,
        startCure: null,
        heatJPerG: null,
        tgUncuredC: null,
        tgCuredC: null,
        lambda: null,
      },
    },
  },
  entries: {
    plies: {
      materials: {
        caliperTotalMm: null,
        caliperPlies: 3,
        offcutMassG: null,
        offcutAreaCm2: null,
        e1GPa: null,
        e2GPa: null,
        g12GPa: null,
        nu12: null,
        expansion1PpmPerK: null,
        expansion2PpmPerK: null,
        expansion3PpmPerK: null,
        tension1Mpa: null,
        compression1Mpa: null,
        tension2Mpa: null,
        compression2Mpa: null,
        shear12Mpa: null,
        freezerDate: '',
        hoursOutH: 0,
        allowedOutTimeH: null,
      },
      stack: {
        faceDown: false,
        mirroredPair: false,
      },
      patches: {
        faceDown: false,
      },
    },
  },
};

export const filledByFormat4: FilledIn = {
  fields: {
    cure: {
      kinetics: {
        k1M: null,
        k1N: null,
      },
    },
  },
  entries: {},
};

export const filledByFormat5: FilledIn = {
  fields: {
    walls: {
      toleranceMm: null,
      filmFaces: 'none',
      filmMm: 0.03,
      filmLimitC: 0,
      goVoidPercent: 1,
      lookVoidPercent: 2.5,
      badVoidPercent: 5,
      wovenGoFraction: 0.53,
      wovenLookFraction: 0.55,
      alignedGoFraction: 0.6,
      alignedLookFraction: 0.62,
      laidIn: 'negative',
      leastOuterRadiusMm: 3,
      leastInnerRadiusMm: 1,
    },
    plies: {
      plateMassG: null,
      plateAreaCm2: null,
      plateThicknessMm: null,
    },
    closing: {
      debulk: 'by hand',
      timeToGelMin: 60,
      resinMarginKPa: 50,
      bagged: 'none',
    },
    mold: {
      sealer: 'not said',
      release: 'not said',
      sealerSolidsPercent: 40,
      releaseSolidsPercent: 5,
      coatSheet: {
        sealerLimitC: null,
        releaseLimitC: null,
      },
    },
    cure: {
      clampLimitFrom: 'not read yet',
      supplierRampKPerMin: 0,
      serviceC: 60,
    },
  },
  entries: {
    plies: {
      patches: {
        kind: 'doubler',
        wallMm: null,
      },
    },
  },
};

export const filledByFormat7: FilledIn = {
  fields: {
    pattern: {
      wallMm: null,
      draftDeg: 3,
      neutralPlane: 'rim',
      insideRadiusMm: 1,
      edges: 'eased',
      keepHolesOverMm: null,
      gridMm: null,
    },
    cutting: {
      startAlongMm: null,
      startAcrossMm: null,
      rimAllowanceMm: 0,
      overlapMm: 0,
      seamAboveRimMm: null,
      stepMm: 1,
    },
  },
  entries: {
    plies: {
      materials: {
        shearWarningDeg: null,
        shearLockingDeg: null,
      },
    },
  },
};
